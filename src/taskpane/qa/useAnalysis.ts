import type { Workbook } from '../../workbook/workbook';
import { isSameAnalysis, readAnalysis, type AnalysisSource } from '../../sheets/analysis/readAnalysis';
import { useSettledView, type UnreadView } from '../controls/useSettledView';

/** What there is to analyse around the selection, before its rows are read. */
export type AnalysisSourceView =
  UnreadView | { readonly status: 'none' } | { readonly status: 'ready'; readonly source: AnalysisSource };

async function read(workbook: Workbook): Promise<AnalysisSourceView> {
  const source = await readAnalysis(workbook);
  return source ? { status: 'ready', source } : { status: 'none' };
}

const isSame = (a: AnalysisSourceView, b: AnalysisSourceView): boolean =>
  a.status === 'ready' && b.status === 'ready'
    ? isSameAnalysis(a.source, b.source)
    : a.status === b.status && a.status !== 'failed';

/** The crimps around the selection; moving on within them changes nothing. */
export const useAnalysis = (workbook: Workbook): { view: AnalysisSourceView; refresh: () => void } =>
  useSettledView<AnalysisSourceView>(workbook, read, isSame);
