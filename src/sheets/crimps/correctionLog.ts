import type { Change, Workbook } from '../../workbook/workbook';
import { appendRows, type GrowingColumn } from '../print/appendRows';
import type { CrimpRow } from './crimpRow';
import type { EntryWriting } from './entryWriting';
import { plainValue } from '../../workbook/cellWords';

const CORRECTIONS_SHEET = 'Corrections';

const COLUMNS: readonly GrowingColumn[] = [
  { heading: 'Date', width: 110, format: 'yyyy-mm-dd hh:mm' },
  { heading: 'Sheet', width: 100 },
  { heading: 'Cell', width: 50 },
  { heading: 'Crimp', width: 160 },
  { heading: 'Before', width: 70 },
  { heading: 'After', width: 70 },
  { heading: 'By', width: 90 },
  { heading: 'Note', width: 150 },
];

interface Circumstances {
  readonly by: string;
  /** Day and time as the sheet's number. */
  readonly moment: number;
  readonly note: string;
}

/** The changes that keep what a writing replaces, one row a cell; none where it replaces nothing. */
export async function correctionChanges(
  workbook: Workbook,
  { title, end }: CrimpRow,
  { sheet, cells }: EntryWriting,
  { by, moment, note }: Circumstances,
): Promise<readonly Change[]> {
  const replaced = cells.filter(({ before }) => before !== '');
  if (replaced.length === 0) return [];
  const name = (await workbook.sheets()).find(each => each.toLowerCase() === CORRECTIONS_SHEET.toLowerCase());
  const used = name ? await workbook.used(name) : undefined;
  const crimp = `${title}${end && `, end ${end}`}`;
  const rows = replaced.map(({ address, before, after }) => [moment, sheet, address, crimp, plainValue(before), after, by, note]);
  return appendRows({ sheet: name ?? CORRECTIONS_SHEET, columns: COLUMNS, rows }, used, name !== undefined).changes;
}
