import type { Panel, PanelProps } from '../controls/panelProps';
import { ViewTabs } from '../controls/ViewTabs';
import { ChecksView } from '../parts/ChecksView';
import { PurchaseView } from './PurchaseView';
import { QuoteView } from './QuoteView';
import { WhatIfView } from './WhatIfView';

const VIEWS: readonly Panel[] = [
  { id: 'quote', title: 'Quote', View: QuoteView },
  { id: 'purchase', title: 'To buy', View: PurchaseView },
  { id: 'checks', title: 'Checks', View: ChecksView },
  { id: 'whatif', title: 'What-if', View: WhatIfView },
];

/** From job lines to money: a quote, what to buy, what the catalogue lacks, what a price rise does. */
export const QuotesPanel = (props: PanelProps) => <ViewTabs label="Quotes" views={VIEWS} {...props} />;
