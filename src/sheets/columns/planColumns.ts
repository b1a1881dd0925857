import { columnLetters, overlap, SHEET_COLUMNS, type Block, cellAddress, addressOf } from '../../workbook/a1';
import { wholeTable } from '../../workbook/hostTable';
import type { Change } from '../../workbook/workbook';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import type { TableView } from './columnsView';
import { columnFormulas } from './columnFormulas';
import { columnGroups, singleColumns } from './columnGroups';
import { formFor, type FormulaForm } from './formulaForm';
import { lineRows } from './lineRows';
import type { AddedColumns } from './needLook';
import type { Offer } from './offer';

/** What will be written, and where, in words. */
export interface ColumnPlan {
  readonly changes: readonly Change[];
  /** Block of the new columns with their headings. */
  readonly at: Block;
  readonly added: AddedColumns;
  readonly form: FormulaForm;
  /** Calls of our functions that the columns cost. */
  readonly calls: number;
  readonly message: string;
}

/** The first of so many columns side by side that are free over rows of the table. */
function freeColumns({ cells, table: { block }, hostTables }: TableView, count: number): number | undefined {
  const free = (column: number) => {
    const strip = { row: block.row, column, rows: block.rows, columns: 1 };
    if (hostTables.some(table => overlap(wholeTable(table), strip))) return false;
    const rows = Array.from({ length: block.rows }, (_, i) => block.row + i);
    // What is merged takes no formula of its own, and Excel spills nothing into it.
    return rows.every(row => cells.isEmpty(row, column) && !cells.merge(row, column) && !cells.filledBy(row, column));
  };
  const end = block.column + block.columns;
  // A free column on either side keeps the new ones apart from what stands there; only from their own table they are not.
  for (let first = end; first + count <= SHEET_COLUMNS; first += 1) {
    const before = first === end ? first : first - 1;
    if (Array.from({ length: first + count + 1 - before }, (_, i) => before + i).every(free)) return first;
  }
  return undefined;
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

/** Wide enough for the longest word of a heading: the words of a heading may stand in lines of their own. */
function widthFor({ inSentences }: Offer, heading: string): number {
  const longest = Math.max(...heading.split(/\s+/).map(word => word.length));
  return Math.min(WIDEST, Math.max(inSentences ? WIDEST : NARROWEST, Math.round(longest * LETTER + BESIDE)));
}

/** Whether nothing stands in a column of the sheet: its width is nobody's choice then. */
const isBlankColumn = (cells: SheetCells, column: number) =>
  cells.used.values.every((_, row) => cells.isEmpty(cells.used.row + row, column));

/** Calls of our functions in a formula, those within the arguments of others among them. */
const callsIn = (formula: string) => formula.match(/\bHOSE\.[A-Z0-9]+\(/g)?.length ?? 0;

/** How the columns of a table are written. */
export function formOf(view: TableView, chosen?: FormulaForm): FormulaForm {
  const { others, last } = lineRows(view);
  return formFor(
    view.table,
    [...others].some(row => row < last),
    chosen,
  );
}

const FORM_WORDS: Readonly<Record<FormulaForm, string>> = {
  cell: 'a formula in every cell',
  row: 'one formula a row and function',
  column: 'one formula a function for all rows',
};

/**
 * Plans the new columns: right of the table, in columns that are empty over its whole height, in one batch. Totals and remarks get none.
 * @throws Error with a sentence where there is nothing to write or no room
 */
export function planColumns(
  view: TableView,
  offers: readonly Offer[],
  wishes: { form?: FormulaForm | undefined } = {},
): ColumnPlan {
  const { cells, table } = view;
  const open = offers.filter(offer => !offer.reason);
  if (open.length === 0) throw new Error('Choose at least one column to add.');
  const { sheet, block } = table;
  const first = freeColumns(view, open.length);
  if (first === undefined) throw new Error('There are no free columns right of the table. Nothing was written.');
  const { others, last: bottom } = lineRows(view);
  const top = block.row + 1;
  const form = formOf(view, wishes.form);
  const groups = form === 'cell' ? singleColumns(open) : columnGroups(open);
  const wanted = groups.flatMap(group => group.offers);
  const formulas = columnFormulas(view, form, groups, { top, bottom, others, first });
  const calls = formulas.flatMap(change => change.formulas.flat()).reduce((sum, formula) => sum + callsIn(formula), 0);
  const at = { row: block.row, column: first, rows: bottom - block.row + 1, columns: wanted.length };
  const heads = { sheet, address: addressOf({ ...at, rows: 1 }) };
  const names = wanted.map(offer => headingOf(offer, table));
  const widths = wanted.flatMap((offer, i): Change[] => {
    if (!isBlankColumn(cells, first + i)) return [];
    const head = cellAddress({ row: block.row, column: first + i });
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
    form,
    calls,
    changes: [
      // A formula entered into a text cell stays text.
      { kind: 'format', at: { sheet, address: addressOf(at) }, numberFormat: 'General' },
      { kind: 'values', at: heads, values: [names] },
      ...formats,
      { kind: 'style', at: heads, style: { bold: true, wrap: true } },
      ...widths,
      ...formulas,
    ],
    message: `Wrote ${where}, rows ${top + 1} to ${bottom + 1} of sheet ${sheet}${calls > 1 ? `, ${FORM_WORDS[form]}` : ''}.`,
  };
}
