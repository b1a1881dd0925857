import { ColumnsPanel } from '../columns/ColumnsPanel';
import { CutsPanel } from '../week/CutsPanel';
import { DutyPanel } from '../quote/DutyPanel';
import type { Panel } from '../controls/panelProps';
import { PartsPanel } from '../parts/PartsPanel';
import { ReadingsPanel } from '../qa/ReadingsPanel';
import { QuotesPanel } from '../quote/QuotesPanel';
import { SheetPanel } from './SheetPanel';

/** The panels, in the order of their tabs. */
export const panels: readonly Panel[] = [
  { id: 'sheet', title: 'Sheet', View: SheetPanel },
  { id: 'parts', title: 'Parts', View: PartsPanel },
  { id: 'columns', title: 'Columns', View: ColumnsPanel },
  { id: 'cuts', title: 'Cuts', View: CutsPanel },
  { id: 'readings', title: 'Readings', View: ReadingsPanel },
  { id: 'duty', title: 'Duty', View: DutyPanel },
  { id: 'quotes', title: 'Quotes', View: QuotesPanel },
];
