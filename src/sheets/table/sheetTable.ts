import type { CellValue, RangeContent } from '../../workbook/workbook';

/** What a column may be called: a pattern over its heading in lower case, without the unit in brackets. */
export type HeadingPatterns<Field extends string> = Readonly<Record<Field, RegExp>>;

/** A column found by its heading. */
export interface FoundColumn {
  readonly heading: string;
  /** Position in the range. */
  readonly index: number;
  /** What stands in brackets behind the heading, in lower case: `mm`, `per m`; "" where there is nothing. */
  readonly unit: string;
}

/** A table on a sheet: its headings and the rows under them. */
export interface SheetTable<Field extends string> {
  readonly content: RangeContent;
  /** Position of the heading row in the range. */
  readonly headingRow: number;
  readonly columns: Readonly<Partial<Record<Field, FoundColumn>>>;
}

/** A heading cell in lower case, its unit taken off. */
export function headingOf(cell: CellValue): { readonly words: string; readonly unit: string } {
  const text = typeof cell === 'string' ? cell.replace(/\s+/g, ' ').trim().toLowerCase() : '';
  const [, words = text, unit = ''] = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*$/.exec(text) ?? [];
  return { words: words.trim(), unit: unit.trim() };
}

function columnsOf<Field extends string>(row: readonly CellValue[], patterns: HeadingPatterns<Field>) {
  const columns: Partial<Record<Field, FoundColumn>> = {};
  const taken = new Set<number>();
  for (const field of Object.keys(patterns) as Field[]) {
    const index = row.findIndex((cell, position) => {
      const { words } = headingOf(cell);
      return !taken.has(position) && words !== '' && patterns[field].test(words);
    });
    if (index < 0) continue;
    taken.add(index);
    columns[field] = { heading: String(row[index]).trim(), index, unit: headingOf(row[index]!).unit };
  }
  return columns;
}

/** Rows at the top of a sheet in which a heading row is looked for: title blocks are short. */
const LOOK_IN = 60;

/**
 * Finds a table by its heading row: the row in which most of the fields are found, all required ones among them.
 * @param patterns fields in order of preference: a column taken by one is not offered to the next
 * @param required fields without which a row is no heading row
 * @param near position of a row in the range: of several tables the last one that starts above it is taken
 */
export function findTable<Field extends string>(
  content: RangeContent | undefined,
  patterns: HeadingPatterns<Field>,
  required: readonly Field[],
  near?: number,
): SheetTable<Field> | undefined {
  if (!content) return undefined;
  let best: (SheetTable<Field> & { readonly found: number }) | undefined;
  const last = Math.min(content.values.length, near === undefined ? LOOK_IN : near + 1);
  for (let headingRow = 0; headingRow < last; headingRow++) {
    const columns = columnsOf(content.values[headingRow]!, patterns);
    const found = Object.keys(columns).length;
    if (required.some(field => !columns[field])) continue;
    if (!best || found > best.found || near !== undefined) best = { content, headingRow, columns, found };
  }
  return best;
}

/** The cell of a field in a row of the range; "" where the table has no such column. */
export function cellOf<Field extends string>(table: SheetTable<Field>, row: number, field: Field): CellValue {
  const column = table.columns[field];
  return (column && table.content.values[row]?.[column.index]) ?? '';
}

/** The cell of a field as text; an error value is no text. */
export function textOf<Field extends string>(table: SheetTable<Field>, row: number, field: Field): string {
  const cell = cellOf(table, row, field);
  return typeof cell === 'object' ? '' : String(cell).trim();
}

/** Positions of the rows under the headings that are not blank, up to the next heading row of the same kind. */
export function dataRows<Field extends string>(table: SheetTable<Field>): readonly number[] {
  const headings = table.content.values[table.headingRow]!;
  const rows: number[] = [];
  for (let row = table.headingRow + 1; row < table.content.values.length; row++) {
    const cells = table.content.values[row]!;
    const columns = Object.values<FoundColumn | undefined>(table.columns);
    if (columns.every(column => headingOf(cells[column!.index]!).words === headingOf(headings[column!.index]!).words)) break;
    if (cells.some(cell => cell !== '')) rows.push(row);
  }
  return rows;
}

/** Number of a row as the sheet shows it. */
export function sheetRow(table: SheetTable<string>, row: number): number {
  return table.content.row + row + 1;
}
