import type { Workbook } from '../../workbook/workbook';
import { isSameCrimpSheet } from '../../sheets/crimps/isSameCrimpSheet';
import { readCrimpSheet, type CrimpSheet } from '../../sheets/crimps/crimpSheet';
import { useSettledView, type UnreadView } from '../controls/useSettledView';

/** The crimps around the selection, before their rows are read. */
export type CrimpSheetView = UnreadView | { readonly status: 'none' } | { readonly status: 'ready'; readonly sheet: CrimpSheet };

async function read(workbook: Workbook): Promise<CrimpSheetView> {
  const sheet = await readCrimpSheet(workbook);
  return sheet?.own ? { status: 'ready', sheet } : { status: 'none' };
}

const isSame = (a: CrimpSheetView, b: CrimpSheetView): boolean =>
  a.status === 'ready' && b.status === 'ready'
    ? isSameCrimpSheet(a.sheet, b.sheet)
    : a.status === b.status && a.status !== 'failed';

/** The crimps around the selection; moving on within them changes nothing. */
export const useCrimpSheet = (workbook: Workbook): { view: CrimpSheetView; refresh: () => void } =>
  useSettledView<CrimpSheetView>(workbook, read, isSame);
