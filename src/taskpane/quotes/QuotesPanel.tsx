import { makeStyles, Tab, TabList, tokens } from '@fluentui/react-components';
import { useState, type ComponentType } from 'react';
import type { Workbook } from '../../host/workbook';
import type { PanelProps } from '../panels';
import { ChecksView } from './ChecksView';
import { PurchaseView } from './PurchaseView';
import { QuoteView } from './QuoteView';
import { WhatIfView } from './WhatIfView';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  tabs: { flexWrap: 'wrap' },
});

const VIEWS: readonly { id: string; title: string; View: ComponentType<{ workbook: Workbook }> }[] = [
  { id: 'quote', title: 'Quote', View: QuoteView },
  { id: 'purchase', title: 'To buy', View: PurchaseView },
  { id: 'checks', title: 'Checks', View: ChecksView },
  { id: 'whatif', title: 'What-if', View: WhatIfView },
];

/** From job lines to money: a quote, what to buy, what the catalogue lacks, what a price rise does. */
export function QuotesPanel({ workbook }: PanelProps) {
  const styles = useStyles();
  const [chosen, setChosen] = useState(VIEWS[0]!.id);
  const { View } = VIEWS.find(view => view.id === chosen)!;
  return (
    <div className={styles.panel}>
      <TabList
        className={styles.tabs}
        size="small"
        appearance="subtle"
        selectedValue={chosen}
        onTabSelect={(_, { value }) => setChosen(String(value))}
        aria-label="Quotes"
      >
        {VIEWS.map(({ id, title }) => (
          <Tab key={id} value={id}>
            {title}
          </Tab>
        ))}
      </TabList>
      <View workbook={workbook} />
    </div>
  );
}
