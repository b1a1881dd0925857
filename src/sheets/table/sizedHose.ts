import { nameOfCell } from '../../cells/sheetCell';
import { isDitto } from './ditto';
import type { FoundTable } from './findTables';
import { headingForms, statedUnit } from './heading';
import type { SheetCells } from './sheetCells';

const SIZE = /^(?:size|hose size|dash|dash (?:size|no\.?|number)|dn|nominal (?:size|bore)|nom\.? size)$/;
const BORE = /^(?:i\.d\.?|hose i\.?d\.?|bore|inside dia(?:meter|\.)?)$/;

/** The column beside the hoses that holds their sizes. */
function sizeColumn({ headings, block }: FoundTable, hose: number): number | undefined {
  const heading = (at: number) => headings[at - block.column] ?? '';
  const isCalled = (at: number, words: RegExp) => headingForms(heading(at)).some(form => words.test(form));
  // `ID` may number the hoses as well: a unit says that it does not.
  const isBore = (at: number) => isCalled(at, BORE) || (isCalled(at, /^id$/) && statedUnit(heading(at), 'length').unit);
  const beside = [hose + 1, hose - 1];
  return beside.find(at => isCalled(at, SIZE)) ?? beside.find(isBore);
}

/** `12` under `DN` is `DN 12`, `6` under `Dash` is `-6`. */
function sizeText(text: string, heading: string): string {
  if (!/^\d/.test(text)) return text.replace(/^[–−](?=\d)/, '-');
  if (/^dn\b/i.test(heading)) return `DN ${text}`;
  return /^dash\b/i.test(heading) && /^\d+$/.test(text) ? `-${text}` : text;
}

/** Whether a name says the size itself: `Birch -6` beside `6`. */
function saysSize(name: string, size: string): boolean {
  const bare = size.replace(/^(?:dn|size)?[\s-]*/i, '').toLowerCase();
  const at = name.toLowerCase().lastIndexOf(bare);
  return at >= 0 && !/[\d/.,]/.test(name.charAt(at - 1)) && !/[\d/.,]/.test(name.charAt(at + bare.length));
}

/**
 * Hoses of which the name alone does not say the size, for a column beside it does: `Birch` of size -6 and `Birch` of size -8 are two hoses.
 * A name that the catalogue knows, or that has figures of its own and one size only, stays as it is.
 * @returns what to add to a name in a row; "" where nothing is
 */
export function sizeBeside(
  cells: SheetCells,
  table: FoundTable,
  hose: number | undefined,
  isHose: ((name: string) => boolean) | undefined,
): ((name: string, row: number) => string) | undefined {
  const column = hose === undefined ? undefined : sizeColumn(table, hose);
  if (column === undefined) return undefined;
  const { block, headings, below } = table;
  const heading = headings[column - block.column]!;
  const sizeIn = (row: number): string => {
    const cell = cells.shown(row, column);
    if (isDitto(cell)) return row - 1 > block.row ? sizeIn(row - 1) : '';
    return sizeText(nameOfCell(cell), heading);
  };
  const sizes = new Map<string, Set<string>>();
  for (const row of [...Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i), ...below]) {
    const name = nameOfCell(cells.shown(row, hose!)).toLowerCase();
    const size = sizeIn(row);
    if (name !== '' && size !== '') sizes.set(name, (sizes.get(name) ?? new Set()).add(size));
  }
  return (name, row) => {
    const size = sizeIn(row);
    if (name === '' || size === '' || isHose?.(name) || saysSize(name, size)) return '';
    return /\d/.test(name) && (sizes.get(name.toLowerCase())?.size ?? 0) < 2 ? '' : ` ${size}`;
  };
}
