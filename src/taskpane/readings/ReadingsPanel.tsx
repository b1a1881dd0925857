import { makeStyles, Tab, TabList, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { PanelProps } from '../panels';
import { views } from './views';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  tabs: { flexWrap: 'wrap' },
});

/** Caliper readings: what they say of machine and settings, entry at the bench, records. */
export function ReadingsPanel(props: PanelProps) {
  const styles = useStyles();
  const [chosen, setChosen] = useState(views[0]!.id);
  const { View } = views.find(view => view.id === chosen)!;
  return (
    <div className={styles.panel}>
      <TabList
        className={styles.tabs}
        size="small"
        appearance="subtle"
        selectedValue={chosen}
        onTabSelect={(_, { value }) => setChosen(String(value))}
        aria-label="Readings"
      >
        {views.map(({ id, title }) => (
          <Tab key={id} value={id}>
            {title}
          </Tab>
        ))}
      </TabList>
      <View key={chosen} {...props} />
    </div>
  );
}
