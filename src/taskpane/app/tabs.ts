import { EntryView } from '../bench/EntryView';
import { MachineView } from '../bench/MachineView';
import { ColumnsView } from '../columns/ColumnsView';
import type { View } from '../controls/viewProps';
import { ChecksView } from '../parts/ChecksView';
import { DialsView } from '../parts/DialsView';
import { IdentifyView } from '../parts/IdentifyView';
import { LoadView } from '../parts/LoadView';
import { SearchView } from '../parts/SearchView';
import { AnalysisView } from '../qa/AnalysisView';
import { GaugesView } from '../qa/GaugesView';
import { RecallView } from '../qa/RecallView';
import { RecordsView } from '../qa/RecordsView';
import { DutyView } from '../quote/DutyView';
import { PurchaseView } from '../quote/PurchaseView';
import { QuoteView } from '../quote/QuoteView';
import { WhatIfView } from '../quote/WhatIfView';
import { CardsView } from '../week/CardsView';
import { CutPlanView } from '../week/CutPlanView';
import { OrderView } from '../week/OrderView';
import { TagsView } from '../week/TagsView';
import type { Tab } from './places';

/** One view under two tabs: what is corrected or chosen in one is so in the other. */
const columns: View = { id: 'columns', title: 'Columns', usesCatalogue: true, View: ColumnsView };

/** The tabs of the pane and their views, in order. Their ids are places (`quote/duty`), which tours and links name. */
export const tabs: readonly Tab[] = [
  {
    id: 'parts',
    title: 'Parts',
    views: [
      { id: 'search', title: 'Search', usesCatalogue: true, View: SearchView },
      { id: 'identify', title: 'Identify', usesCatalogue: true, View: IdentifyView },
      { id: 'load', title: 'Load', View: LoadView },
      { id: 'checks', title: 'Checks', usesCatalogue: true, View: ChecksView },
      { id: 'dials', title: 'Dials', usesCatalogue: true, View: DialsView },
    ],
  },
  {
    id: 'quote',
    title: 'Quote',
    views: [
      { id: 'duty', title: 'Duty', usesCatalogue: true, View: DutyView },
      columns,
      { id: 'quote', title: 'Quote', usesCatalogue: true, View: QuoteView },
      { id: 'to-buy', title: 'To buy', usesCatalogue: true, View: PurchaseView },
      { id: 'what-if', title: 'What-if', usesCatalogue: true, View: WhatIfView },
    ],
  },
  {
    id: 'week',
    title: 'Week',
    views: [
      columns,
      { id: 'order', title: 'Order', usesCatalogue: true, View: OrderView },
      { id: 'cut-list', title: 'Cut list', usesCatalogue: true, View: CutPlanView },
      { id: 'cards', title: 'Cards', usesCatalogue: true, View: CardsView },
      { id: 'tags', title: 'Tags', usesCatalogue: true, View: TagsView },
    ],
  },
  {
    id: 'bench',
    title: 'Bench',
    views: [
      { id: 'entry', title: 'Entry', usesCatalogue: true, View: EntryView },
      { id: 'machine', title: 'Machine', usesCatalogue: true, View: MachineView },
    ],
  },
  {
    id: 'qa',
    title: 'QA',
    views: [
      { id: 'analysis', title: 'Analysis', usesCatalogue: true, View: AnalysisView },
      { id: 'records', title: 'Records', usesCatalogue: true, View: RecordsView },
      { id: 'recall', title: 'Recall', View: RecallView },
      { id: 'gauges', title: 'Gauges', View: GaugesView },
    ],
  },
];
