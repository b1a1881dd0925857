import { splitHeading } from '../../core/catalogue/headings';
import { headingKey } from '../../core/catalogue/partName';
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
}

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
export function tableOfProblem({ sheet }: Problem): TableName {
  return TABLE_NAMES.find(name => catalogueTables[name].sheet === sheet)!;
}

/** Says where a problem stands, in the sheet or file its table came from. */
export function placedProblem(problem: Problem, origin: TableOrigin): PlacedProblem {
  const row = origin.firstRow + problem.row;
  const column = columnOf(origin, problem.column);
  const letters = column === undefined ? 'A' : columnLetters(column);
  return {
    place: `${origin.label}, row ${row}${column === undefined ? '' : `, column ${letters}`}`,
    at: origin.sheet === undefined ? undefined : { sheet: origin.sheet, address: `${letters}${row}` },
    sentence: `${problem.column} is ${received(problem, origin)}, expected ${problem.expected}`,
  };
}
