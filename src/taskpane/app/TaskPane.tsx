import { FluentProvider, makeStyles, Tab, TabList, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { hostServices } from './hostServices';
import { KeptViews } from '../controls/KeptViews';
import type { PanelProps } from '../controls/panelProps';
import { panels } from './panels';
import { useTheme } from './useTheme';

const useStyles = makeStyles({
  pane: {
    minHeight: '100%',
    boxSizing: 'border-box',
    padding: tokens.spacingHorizontalM,
    display: 'flex',
    flexDirection: 'column',
    gap: tokens.spacingVerticalM,
  },
  tabs: { flexWrap: 'wrap' },
});

interface Props extends Omit<PanelProps, 'services'> {
  /** Panel that the host wants opened; a new object is a new wish. */
  readonly wanted?: { readonly panel: string } | undefined;
}

/** The task pane: one tab a panel. The same in Excel and in the try-out sheet; it reaches the workbook through its port only. */
export function TaskPane({ workbook, functions, wanted }: Props) {
  const styles = useStyles();
  const [chosen, setChosen] = useState(panels[0]!.id);
  const [granted, setGranted] = useState<Props['wanted']>();
  if (wanted !== granted) {
    setGranted(wanted);
    if (panels.some(panel => panel.id === wanted?.panel)) setChosen(wanted!.panel);
  }
  // Another file in the same pane: what a panel has found, or is still working at, belongs to the one before.
  const [shown, setShown] = useState({ workbook, count: 0 });
  if (shown.workbook !== workbook) setShown({ workbook, count: shown.count + 1 });
  // In the try-out page the pane stands in a landmark of that page, and the sheet is what the page is about.
  const Frame = workbook.host === 'try-out' ? 'div' : 'main';
  return (
    <FluentProvider theme={useTheme()} style={{ minHeight: '100%' }}>
      <Frame className={styles.pane} data-frame="pane">
        <TabList
          className={styles.tabs}
          aria-label="Panels"
          size="small"
          selectedValue={chosen}
          onTabSelect={(_, { value }) => setChosen(String(value))}
        >
          {panels.map(panel => (
            <Tab key={panel.id} id={`tab-${panel.id}`} value={panel.id}>
              {panel.title}
            </Tab>
          ))}
        </TabList>
        <KeptViews
          key={shown.count}
          views={panels}
          chosen={chosen}
          workbook={workbook}
          functions={functions}
          services={hostServices}
        />
      </Frame>
    </FluentProvider>
  );
}
