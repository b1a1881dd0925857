import { makeStyles, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { KeptViews } from './KeptViews';
import type { Panel, PanelProps } from './panelProps';
import { TabRow } from './TabRow';

const useStyles = makeStyles({ panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

interface ViewTabsProps extends PanelProps {
  /** What the row of tabs is called. */
  readonly label: string;
  readonly views: readonly Panel[];
}

/** A panel of several views with a row of tabs of its own. */
export function ViewTabs({ label, views, ...props }: ViewTabsProps) {
  const styles = useStyles();
  const [chosen, setChosen] = useState(views[0]!.id);
  return (
    <div className={styles.panel}>
      <TabRow label={label} tabs={views} chosen={chosen} onChoose={setChosen} />
      <KeptViews views={views} chosen={chosen} {...props} />
    </div>
  );
}
