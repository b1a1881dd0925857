import { addressOf } from '../../../src/workbook/a1';
import type { openSample } from './openSample';

type OpenBook = Awaited<ReturnType<typeof openSample>>;

/** Where the sample keeps numbers that formulas multiply: sheet and heading. */
export const PRICED = [
  ['Hoses', 'Price per length (per m)'],
  ['Fittings', 'Price'],
  ['Guards', 'Price per length (per m)'],
  ['Rates', 'Value'],
] as const;

/** Makes the numbers of a column text with a decimal comma, as they come out of other programs; gives those that were turned. */
export async function asCommaTexts(book: OpenBook, sheet: string, heading: string): Promise<readonly string[]> {
  const { values, row, column } = await book.content(sheet);
  const head = values.findIndex(cells => cells.includes(heading));
  const at = values[head]!.indexOf(heading);
  const turned = values.slice(head + 1).map(cells => {
    const cell = cells[at]!;
    return typeof cell === 'number' ? String(cell).replace('.', ',') : cell;
  });
  const address = addressOf({ row: row + head + 1, column: column + at, rows: turned.length, columns: 1 });
  await book.write([
    { kind: 'format', at: { sheet, address }, numberFormat: '@' },
    { kind: 'values', at: { sheet, address }, values: turned.map(cell => [cell as string]) },
  ]);
  return turned.map(String);
}
