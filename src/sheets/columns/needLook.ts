import { type Block, cellAddress, addressOf } from '../../workbook/a1';
import { SPILL_SENTENCE } from '../table/spilledFrom';
import type { CellValue, RangeContent, Workbook } from '../../workbook/workbook';

/** Columns that were added to a table. */
export interface AddedColumns {
  readonly sheet: string;
  /** With their headings. */
  readonly block: Block;
  readonly columns: readonly { readonly heading: string; readonly good: string | undefined }[];
  /** Rows in between that got no formula, zero-based. */
  readonly others: ReadonlySet<number>;
}

/** A row in which an added column answers with an error, or with something to look at. */
export interface LookRow {
  /** As the sheet shows it. */
  readonly row: number;
  /** Address of the first such cell. */
  readonly at: string;
  /** `Verdict: LOOSE`; `Dial A: #N/A, …`. */
  readonly what: string;
}

/** What the added columns answer. */
export interface RowsLooked {
  /** Rows that have an answer. */
  readonly rows: number;
  readonly needLook: readonly LookRow[];
  /** The host is still calculating. */
  readonly isWaiting: boolean;
}

const UNANSWERED: ReadonlySet<string> = new Set(['#BUSY!', '#GETTING_DATA', '#CONNECT!']);

const isUnanswered = (value: CellValue) => typeof value === 'object' && UNANSWERED.has(value.error);

/** What a cell says that somebody should look at; undefined where nothing is wrong with it. */
function trouble(value: CellValue, good: string | undefined): string | undefined {
  if (typeof value === 'object') {
    const sentence = value.sentence ?? (value.error === '#SPILL!' ? SPILL_SENTENCE : undefined);
    return sentence ? `${value.error}, ${sentence}` : value.error;
  }
  return good === undefined || value === '' || value === good ? undefined : String(value);
}

/** True where a formula shows nothing: it has not been calculated, or its row is not filled in. */
function isBlankEverywhere({ values }: RangeContent): boolean {
  return values.slice(1).every(row => row.every(value => value === ''));
}

/** Which rows of added columns need a look. */
export function rowsLooked(added: AddedColumns, content: RangeContent): RowsLooked {
  const { block, columns, others } = added;
  const needLook: LookRow[] = [];
  let rows = 0;
  let isWaiting = isBlankEverywhere(content);
  for (let row = block.row + 1; row < block.row + block.rows; row += 1) {
    if (others.has(row)) continue;
    const cells = columns.map((_, i) => content.values[row - content.row]?.[block.column + i - content.column] ?? '');
    // A row that is not filled in yet has no answers.
    if (cells.every(cell => cell === '')) continue;
    rows += 1;
    if (cells.some(isUnanswered)) {
      isWaiting = true;
      continue;
    }
    const found = cells.findIndex((cell, i) => trouble(cell, columns[i]!.good) !== undefined);
    if (found < 0) continue;
    const at = cellAddress({ row, column: block.column + found });
    needLook.push({ row: row + 1, at, what: `${columns[found]!.heading}: ${trouble(cells[found]!, columns[found]!.good)}` });
  }
  return { rows, needLook, isWaiting };
}

/** Reads added columns and says which of their rows need a look. */
export async function lookAtRows(workbook: Workbook, added: AddedColumns): Promise<RowsLooked> {
  const [content] = await workbook.read([{ sheet: added.sheet, address: addressOf(added.block) }]);
  return rowsLooked(added, content!);
}
