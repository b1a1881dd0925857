import { makeStyles, Tab, TabList, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import type { Panel, PanelProps } from './panelProps';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  tabs: { flexWrap: 'wrap' },
});

interface ViewTabsProps extends PanelProps {
  /** What the row of tabs is called. */
  readonly label: string;
  readonly views: readonly Panel[];
}

/** A panel of several views with a row of tabs of its own. */
export function ViewTabs({ label, views, ...props }: ViewTabsProps) {
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
        aria-label={label}
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
