import { splitHeading } from '../../core/units/headingUnit';
import { headingKey } from '../../core/catalogue/partName';
import type { Note } from '../../core/catalogue/note';
import type { Problem } from '../../core/catalogue/problem';
import type { RawTable } from '../../core/catalogue/rawTable';
import { TABLE_NAMES, catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { columnLetters } from '../../workbook/a1';
import type { RangeAddress } from '../../workbook/workbook';

/** Where a table came from. */
export interface TableOrigin {
  /** `hoses.csv`, `parts.xlsx, sheet Hoses`, `sheet Hoses`. */
  readonly label: string;
  readonly raw: RawTable;
  /** Zero-based place of the table's first cell in its sheet or file. */
  readonly firstRow: number;
  readonly firstColumn: number;
  /** Its sheet, where it stands in this workbook. */
  readonly sheet?: string | undefined;
}

/** A problem with the place where it stands. */
export interface PlacedProblem {
  /** `parts.xlsx, sheet Hoses, row 7, column E`. */
  readonly place: string;
  /** The cell, where it stands in this workbook. */
  readonly at: RangeAddress | undefined;
  readonly sentence: string;
  /** Left out where the table as a whole is meant. */
  readonly cell?: { readonly label: string; readonly row: number; readonly column: string };
}

/** Runs of rows that are named. */
const RUNS = 6;

function columnOf({ raw, firstColumn }: TableOrigin, heading: string): number | undefined {
  const headings = raw.find(cells => cells.some(cell => cell !== null && cell !== ''));
  const index = headings?.findIndex(
    cell => typeof cell === 'string' && headingKey(splitHeading(cell).name) === headingKey(heading),
  );
  return index === undefined || index < 0 ? undefined : firstColumn + index;
}

/** Rows named in the sentence are counted as the sheet counts them. */
function received({ received: text }: Problem, { firstRow }: TableOrigin): string {
  return text.startsWith('the same as in row ') ? text.replace(/\d+/g, row => String(Number(row) + firstRow)) : text;
}

/** The table that a problem is about. */
export function tableOfProblem({ sheet }: Pick<Problem, 'sheet'>): TableName {
  return TABLE_NAMES.find(name => catalogueTables[name].sheet === sheet)!;
}

function placed(row: number, heading: string, origin: TableOrigin, sentence: string): PlacedProblem {
  const column = columnOf(origin, heading);
  const letters = column === undefined ? 'A' : columnLetters(column);
  // Row 0 means the table as a whole.
  const shownRow = origin.firstRow + Math.max(row, 1);
  const cell = `${column === undefined ? '' : `, column ${letters}`}`;
  return {
    place: row === 0 ? origin.label : `${origin.label}, row ${shownRow}${cell}`,
    at: origin.sheet === undefined ? undefined : { sheet: origin.sheet, address: `${letters}${shownRow}` },
    sentence,
    ...(row > 0 && { cell: { label: origin.label, row: shownRow, column: cell } }),
  };
}

/** Says where a problem stands, in the sheet or file its table came from. */
export function placedProblem(problem: Problem, origin: TableOrigin): PlacedProblem {
  const sentence = `${problem.column} is ${received(problem, origin)}, expected ${problem.expected}`;
  return placed(problem.row, problem.column, origin, sentence);
}

/** Says where something stands that looks wrong. */
export function placedNote({ row, column, text }: Note, origin: TableOrigin): PlacedProblem {
  return placed(row, column, origin, text);
}

/** Rows as runs: `2–4, 9`. */
function rowRuns(rows: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const row of [...rows].sort((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run && row <= run[1] + 1) run[1] = row;
    else runs.push([row, row]);
  }
  const more = runs.length > RUNS ? ', …' : '';
  return (
    runs
      .slice(0, RUNS)
      .map(([first, last]) => (first === last ? `${first}` : `${first}–${last}`))
      .join(', ') + more
  );
}

/** One cause once: what is said of several rows of a column in the same words comes once, with its rows. */
export function placedGroups(problems: readonly PlacedProblem[]): readonly PlacedProblem[] {
  const groups = new Map<string, PlacedProblem[]>();
  problems.forEach((problem, index) => {
    const { cell, sentence } = problem;
    const key = cell ? [cell.label, cell.column, sentence].join('\u001f') : String(index);
    const group = groups.get(key);
    if (group) group.push(problem);
    else groups.set(key, [problem]);
  });
  return [...groups.values()].map(group => {
    const [first] = group as [PlacedProblem, ...PlacedProblem[]];
    if (group.length === 1) return first;
    const { label, column } = first.cell!;
    return { ...first, place: `${label}, rows ${rowRuns(group.map(({ cell }) => cell!.row))}${column} (${group.length} rows)` };
  });
}
