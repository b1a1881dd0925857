import { splitHeading } from '../../core/units/headingUnit';
import { headingKey } from '../../core/catalogue/partName';
import { machinesTable } from '../../core/catalogue/tables/machinesTable';
import { addressOf, blockOf, SHEET_ROWS, type Block } from '../../workbook/a1';
import type { RangeAddress, RangeContent } from '../../workbook/workbook';
import { isDateFormat } from '../../core/units/sheetDate';
import { DATE_FORMAT } from '../print/dateFormat';

/** A field of the table Machines. */
export type RegisterField = keyof typeof machinesTable.fields;

/** Rows that the range gets besides, where nothing stands below. */
export const SPARE_ROWS = 20;

/** The number format of a date: one with a time of day shows it, too. */
export const momentFormat = (format: string, moment: number): string =>
  Number.isInteger(moment) || /h/i.test(format) ? format : `${format} hh:mm`;

const NEEDED = ['machine', 'die', 'hose', 'fitting', 'dial', 'date'] as const satisfies readonly RegisterField[];

/** A table Machines on its sheet. */
export interface RegisterTable {
  readonly at: RangeAddress;
  readonly content: RangeContent;
}

/** Where a new row of the register goes. */
export interface RegisterPlace {
  /** Columns by field, counted from the left of the sheet. */
  readonly columns: Readonly<Partial<Record<RegisterField, number>>>;
  /** The new row, counted from 0. */
  readonly row: number;
  /** The range that CATALOGUE is to read; undefined where the one it reads will do. */
  readonly extended: RangeAddress | undefined;
  readonly dateFormat: string;
}

/** Columns of the fields by the first row in which something stands. */
function registerColumns({ values, column }: RangeContent): Partial<Record<RegisterField, number>> {
  const headings = values.find(row => row.some(cell => cell !== '')) ?? [];
  const keys = headings.map(cell => (typeof cell === 'string' ? headingKey(splitHeading(cell).name) : ''));
  const found: Partial<Record<RegisterField, number>> = {};
  for (const [field, { heading }] of Object.entries(machinesTable.fields) as [RegisterField, { heading: string }][]) {
    const index = keys.indexOf(headingKey(heading));
    if (index >= 0) found[field] = column + index;
  }
  return found;
}

/** First row under the table in which something stands in its columns; the end of the sheet where nothing does. */
function nextFilledRow(sheet: RangeContent, block: Block, from: number): number {
  for (let row = from; row < sheet.row + sheet.values.length; row++) {
    for (let column = block.column; column < block.column + block.columns; column++) {
      const value = sheet.values[row - sheet.row]?.[column - sheet.column] ?? '';
      const formula = sheet.formulas[row - sheet.row]?.[column - sheet.column] ?? '';
      if (value !== '' || formula !== '') return row;
    }
  }
  return SHEET_ROWS;
}

/**
 * The place of the next row under a table Machines, or the sentence that says why there is none.
 * @param sheet the used part of the sheet that the table stands on
 */
export function registerPlace({ at, content }: RegisterTable, sheet: RangeContent): RegisterPlace | string {
  const columns = registerColumns(content);
  const missing = NEEDED.filter(field => columns[field] === undefined).map(field => machinesTable.fields[field].heading);
  if (missing.length > 0) return `Machines has no column ${missing.join(', ')}: add it, so that old dials are kept.`;
  const block = blockOf(at.address)!;
  const used = content.values.reduce((last, row, index) => (row.some(cell => cell !== '') ? index : last), 0);
  const row = content.row + used + 1;
  const free = nextFilledRow(sheet, block, row);
  if (free === row) return `Row ${row + 1} of sheet ${at.sheet}, right below the table Machines, is filled: make room there.`;
  const isInside = row < block.row + block.rows;
  const rows = Math.min(row - block.row + 1 + SPARE_ROWS, free - block.row);
  const extended = isInside ? undefined : { sheet: at.sheet, address: addressOf({ ...block, rows }) };
  const above = content.formats[used]?.[columns.date! - content.column] ?? '';
  return { columns, row, extended, dateFormat: isDateFormat(above) ? above : DATE_FORMAT };
}
