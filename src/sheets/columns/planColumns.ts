import { addressOf, columnLetters, overlap, SHEET_COLUMNS, type Block } from '../../workbook/a1';
import { wholeTable } from '../../workbook/hostTable';
import type { Change } from '../../workbook/workbook';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import type { TableView } from './columnsView';
import { lineRows } from './lineRows';
import type { AddedColumns } from './needLook';
import { partOf, type Offer, type Place } from './offer';

/** Above this many rows one spill formula a column is written. */
export const MANY_ROWS = 2000;

/** What will be written, and where, in words. */
export interface ColumnPlan {
  readonly changes: readonly Change[];
  /** Block of the new columns with their headings. */
  readonly at: Block;
  readonly added: AddedColumns;
  readonly spill: boolean;
  readonly told: string;
}

/** The first of so many columns side by side that are free over rows of the table. */
function freeColumns({ cells, table: { block }, hostTables }: TableView, count: number): number | undefined {
  const free = (column: number) => {
    const strip = { row: block.row, column, rows: block.rows, columns: 1 };
    if (hostTables.some(table => overlap(wholeTable(table), strip))) return false;
    return Array.from({ length: block.rows }, (_, i) => block.row + i).every(row => cells.isEmpty(row, column));
  };
  const end = block.column + block.columns;
  // A free column on either side keeps the new ones apart from what stands there; only from their own table they are not.
  for (let first = end; first + count <= SHEET_COLUMNS; first += 1) {
    const before = first === end ? first : first - 1;
    if (Array.from({ length: first + count + 1 - before }, (_, i) => before + i).every(free)) return first;
  }
  return undefined;
}

function placeOf({ columns, catalogue }: TableView, first: number, last: number): Place {
  return {
    index: last > first ? 0 : 1,
    catalogue: catalogue.reference ?? 'Catalogue',
    at: role => {
      const span = columns[role]!;
      return addressOf({ row: first, column: span.first, rows: last - first + 1, columns: span.last - span.first + 1 });
    },
  };
}

/** The formula of one offered column, for one row or, as a spill, for several. */
function formulaOf(offer: Offer, view: TableView, firstRow: number, lastRow = firstRow): string {
  const place = placeOf(view, firstRow, lastRow);
  const call = offer.call(place);
  return `=${offer.part ? partOf(call, place, offer.part) : call}`;
}

function headingOf(offer: Offer, table: FoundTable): string {
  const heading = offer.unit ? `${offer.heading} (${offer.unit})` : offer.heading;
  const known = new Set(table.headings.map(each => each.toLowerCase()));
  let name = heading;
  for (let n = 2; known.has(name.toLowerCase()); n += 1) name = `${heading} ${n}`;
  return name;
}

/** Widths in points: about a letter of a bold heading, what stands beside the letters, and the bounds. */
const [LETTER, BESIDE, NARROWEST, WIDEST] = [6.2, 14, 60, 160];
/** Columns that answer in sentences. */
const IN_SENTENCES: ReadonlySet<string> = new Set(['assembly']);

/** Wide enough for the longest word of a heading: the words of a heading may stand in lines of their own. */
function widthFor({ id }: Offer, heading: string): number {
  const longest = Math.max(...heading.split(/\s+/).map(word => word.length));
  return Math.min(WIDEST, Math.max(IN_SENTENCES.has(id) ? WIDEST : NARROWEST, Math.round(longest * LETTER + BESIDE)));
}

/** Whether nothing stands in a column of the sheet: its width is nobody's choice then. */
const isBlankColumn = (cells: SheetCells, column: number) =>
  cells.used.values.every((_, row) => cells.isEmpty(cells.used.row + row, column));

/**
 * Plans the new columns: right of the table, in columns that are empty over its whole height, in one batch. Totals and remarks get none.
 * @throws Error with a sentence where there is nothing to write or no room
 */
export function planColumns(view: TableView, offers: readonly Offer[], { spill = false } = {}): ColumnPlan {
  const { cells, table } = view;
  const wanted = offers.filter(offer => !offer.reason);
  if (wanted.length === 0) throw new Error('Choose at least one column to add.');
  const { sheet, block } = table;
  const first = freeColumns(view, wanted.length);
  if (first === undefined) throw new Error('There are no free columns right of the table. Nothing was written.');
  const { others, last: bottom } = lineRows(view);
  const top = block.row + 1;
  const asSpill = !table.hostTable && bottom > top && (spill || bottom - top + 1 > MANY_ROWS);
  const body = { row: top, column: first, rows: asSpill ? 1 : bottom - top + 1, columns: wanted.length };
  const rowFormulas = (row: number) => wanted.map(offer => (others.has(row) ? '' : formulaOf(offer, view, row)));
  const formulas = asSpill
    ? [wanted.map(offer => formulaOf(offer, view, top, bottom))]
    : Array.from({ length: body.rows }, (_, i) => rowFormulas(top + i));
  const at = { row: block.row, column: first, rows: bottom - block.row + 1, columns: wanted.length };
  const heads = { sheet, address: addressOf({ ...at, rows: 1 }) };
  const names = wanted.map(offer => headingOf(offer, table));
  const widths = wanted.flatMap((offer, i): Change[] => {
    if (!isBlankColumn(cells, first + i)) return [];
    const head = addressOf({ row: block.row, column: first + i, rows: 1, columns: 1 });
    return [{ kind: 'style', at: { sheet, address: head }, style: { columnWidth: widthFor(offer, names[i]!) } }];
  });
  const formats = wanted.flatMap(({ format }, i): Change[] =>
    format
      ? [
          {
            kind: 'format',
            at: { sheet, address: addressOf({ ...at, row: top, column: first + i, rows: bottom - block.row, columns: 1 }) },
            numberFormat: format,
          },
        ]
      : [],
  );
  const where = names.map((name, i) => `${name} in column ${columnLetters(first + i)}`).join(', ');
  return {
    at,
    added: { sheet, block: at, columns: wanted.map(({ good }, i) => ({ heading: names[i]!, good })), others },
    spill: asSpill,
    changes: [
      // A formula entered into a text cell stays text.
      { kind: 'format', at: { sheet, address: addressOf(at) }, numberFormat: 'General' },
      { kind: 'values', at: heads, values: [names] },
      ...formats,
      { kind: 'style', at: heads, style: { bold: true, wrap: true } },
      ...widths,
      { kind: 'formulas', at: { sheet, address: addressOf(body) }, formulas },
    ],
    told: `Wrote ${where}, rows ${top + 1} to ${bottom + 1} of sheet ${sheet}${asSpill ? ', one formula a column' : ', one formula a row'}.`,
  };
}
