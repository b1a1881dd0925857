import { DialsView } from '../parts/DialsView';
import { EntryView } from '../bench/EntryView';
import { MachineView } from '../bench/MachineView';
import type { Panel } from '../controls/panelProps';
import { RecordsView } from './RecordsView';
import { AnalysisView } from './AnalysisView';

/** The views of the panel, in the order of their tabs. */
export const views: readonly Panel[] = [
  { id: 'analysis', title: 'Analysis', View: AnalysisView },
  { id: 'entry', title: 'Entry', View: EntryView },
  { id: 'dials', title: 'Dials', View: DialsView },
  { id: 'machine', title: 'Machine', View: MachineView },
  { id: 'records', title: 'Records', View: RecordsView },
];
