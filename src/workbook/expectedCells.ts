import { blockOf, cellAddress } from './a1';
import type { Change, Expected, RangeContent, Workbook } from './workbook';
import { cellWords } from './cellWords';
import { isCellChange } from './cellChange';

/** One cell that is expected to hold something: a formula with its `=`, or a value as words. */
interface ExpectedCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly words: string;
}

/** The cells that the changes put something into; of a cell that is written twice, as it is written last. */
function* cellsOf(changes: readonly Change[], sheets: ReadonlySet<string>): Generator<ExpectedCell> {
  const last = new Map<string, ExpectedCell>();
  for (const change of changes) {
    if (!isCellChange(change) || !sheets.has(change.at.sheet)) continue;
    const { row, column } = blockOf(change.at.address)!;
    const table: readonly (readonly (string | number | boolean)[])[] = change.kind === 'values' ? change.values : change.formulas;
    for (const [r, cells] of table.entries()) {
      for (const [c, cell] of cells.entries()) {
        const at = { sheet: change.at.sheet, row: row + r, column: column + c };
        last.set(`${at.sheet} ${at.row} ${at.column}`, { ...at, words: String(cell) });
      }
    }
  }
  yield* last.values();
}

const formulaIn = ({ row, column, formulas }: RangeContent, cell: ExpectedCell) =>
  formulas[cell.row - row]?.[cell.column - column] ?? '';

/** Whether a cell holds that as its value or as its formula. */
function holds(content: RangeContent, cell: ExpectedCell): boolean {
  const value = content.values[cell.row - content.row]?.[cell.column - content.column] ?? '';
  return cellWords(value) === cell.words || (cell.words !== '' && formulaIn(content, cell) === cell.words);
}

/**
 * The first cell that no longer holds what it held when the changes were planned; undefined where all do. Only cells that the changes
 * write are looked at.
 * @param standing content that covers the written ranges, by sheet; cells outside it are blank
 * @returns such as `Jobs!B7`
 */
export function firstUnexpected(
  changes: readonly Change[],
  expected: Expected,
  standing: ReadonlyMap<string, RangeContent>,
): string | undefined {
  const sheets = new Set(standing.keys());
  const written = new Map([...cellsOf(changes, sheets)].map(cell => [`${cell.sheet} ${cell.row} ${cell.column}`, cell]));
  const isBlank = expected === 'blank';
  const cells = isBlank ? [...written.values()].map(cell => ({ ...cell, words: '' })) : [...cellsOf(expected, sheets)];
  const other = cells.find(cell => {
    const content = standing.get(cell.sheet)!;
    if (!written.has(`${cell.sheet} ${cell.row} ${cell.column}`)) return false;
    // A formula that shows nothing is not blank.
    return !holds(content, cell) || (isBlank && formulaIn(content, cell) !== '');
  });
  return other && `${other.sheet}!${cellAddress(other)}`;
}

/** All that stands on the sheets that changes put something into, by sheet; sheets that come with the changes have none. */
export async function sheetsToWrite(
  workbook: Pick<Workbook, 'read'>,
  changes: readonly Change[],
): Promise<ReadonlyMap<string, RangeContent>> {
  const added = new Set(changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : [])));
  const sheets = [...new Set(changes.flatMap(change => (isCellChange(change) ? [change.at.sheet] : [])))].filter(
    sheet => !added.has(sheet),
  );
  const contents = await workbook.read(sheets.map(sheet => ({ sheet, address: 'A1:XFD1048576' })));
  return new Map(sheets.map((sheet, index) => [sheet, contents[index]!]));
}

/** Why a writing is not begun where a cell changed since it was planned. */
export const changedMeanwhile = (cell: string): string =>
  `${cell} has changed since this was planned, perhaps by somebody who works in the same workbook. Look at it, then try again.`;
