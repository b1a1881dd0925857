import { addressOf, blockOf, overlap, type Block } from '../../workbook/a1';
import type { Change, RangeContent } from '../../workbook/workbook';
import type { SheetIds } from './checkChanges';
import { literal } from './literal';
import { readRangesOrPieces } from './readRanges';
import { run } from './run';

/** What stands in the cells that changes go to, by sheet: one block around them, clipped to the used part. */
export type CellsBefore = ReadonlyMap<string, RangeContent>;

/** Blocks of standing sheets of which contents or number formats are changed, by sheet. */
function changedBlocks(changes: readonly Change[], ids: SheetIds): ReadonlyMap<string, readonly Block[]> {
  const blocks = new Map<string, Block[]>();
  for (const change of changes) {
    if (change.kind !== 'values' && change.kind !== 'formulas' && change.kind !== 'format') continue;
    const { sheet, address } = change.at;
    if (!ids.has(sheet)) continue;
    const own = blocks.get(sheet) ?? [];
    blocks.set(sheet, own);
    own.push(blockOf(address)!);
  }
  return blocks;
}

function around(blocks: readonly Block[]): Block {
  return blocks.reduce((all, block) => {
    const row = Math.min(all.row, block.row);
    const column = Math.min(all.column, block.column);
    const rows = Math.max(all.row + all.rows, block.row + block.rows) - row;
    const columns = Math.max(all.column + all.columns, block.column + block.columns) - column;
    return { row, column, rows, columns };
  });
}

/** Reads what stands in the cells that changes go to; in pieces where it is too much for one answer. */
export async function cellsBefore(changes: readonly Change[], ids: SheetIds): Promise<CellsBefore> {
  const blocks = [...changedBlocks(changes, ids)];
  if (blocks.length === 0) return new Map();
  const contents = await readRangesOrPieces(
    blocks.map(([sheet, own]) => ({ sheet: ids.get(sheet)!, address: addressOf(around(own)) })),
  );
  return new Map(blocks.map(([sheet], index) => [sheet, contents[index]!]));
}

interface Held {
  readonly entered: string | number | boolean;
  /** undefined outside the used part, where none was read. */
  readonly format: string | undefined;
}

/** What a cell holds, as it would be entered. */
function heldIn({ row, column, values, formulas, formats }: RangeContent, r: number, c: number): Held {
  const [line, place] = [r - row, c - column];
  const value = values[line]?.[place] ?? '';
  const entered = formulas[line]?.[place] || (typeof value === 'object' ? value.error : literal(value));
  return { entered, format: formats[line]?.[place] };
}

/** Cells of a block that hold something else now. */
function otherCells(block: Block, before: RangeContent, now: RangeContent): { row: number; column: number }[] {
  const cells: { row: number; column: number }[] = [];
  for (let row = block.row; row < block.row + block.rows; row++) {
    for (let column = block.column; column < block.column + block.columns; column++) {
      const [was, is] = [heldIn(before, row, column), heldIn(now, row, column)];
      const isFormat = was.format !== undefined && was.format !== (is.format ?? 'General');
      if (was.entered !== is.entered || isFormat) cells.push({ row, column });
    }
  }
  return cells;
}

const extentOf = ({ row, column, values }: RangeContent): Block => ({
  row,
  column,
  rows: values.length,
  columns: values[0]!.length,
});

/** Rows below each other as one part of a block. */
function parts(block: Block, rows: readonly number[]): Block[] {
  const found: Block[] = [];
  for (const row of rows) {
    const last = found.at(-1);
    if (last && row < last.row + last.rows) continue;
    if (last && row === last.row + last.rows) found[found.length - 1] = { ...last, rows: last.rows + 1 };
    else found.push({ ...block, row, rows: 1 });
  }
  return found;
}

/** The parts of blocks in which cells hold something else now. */
async function othersOn(id: string, blocks: readonly Block[], before: RangeContent): Promise<Block[]> {
  const [now] = await readRangesOrPieces([{ sheet: id, address: addressOf(around(blocks)) }]);
  // Outside of what was read cells are blank, then as now.
  const reach = around([extentOf(before), extentOf(now!)]);
  return blocks.flatMap(block => {
    const reached = overlap(block, reach);
    const rows = reached ? otherCells(reached, before, now!).map(({ row }) => row) : [];
    return reached ? parts(reached, rows) : [];
  });
}

/** Cells put back in one request, about. */
const CELLS_A_REQUEST = 20_000;

async function putBack(id: string, others: readonly Block[], before: RangeContent): Promise<void> {
  const known = extentOf(before);
  const table = <T>({ row, column, rows, columns }: Block, pick: (held: Held) => T) =>
    Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => pick(heldIn(before, row + r, column + c))));
  await run(async context => {
    const worksheet = context.workbook.worksheets.getItem(id);
    let cells = 0;
    for (const part of others) {
      // The format first: in a cell of text a number would become one.
      const formatted = overlap(part, known);
      if (formatted) worksheet.getRange(addressOf(formatted)).numberFormat = table(formatted, ({ format }) => format!);
      worksheet.getRange(addressOf(part)).formulas = table(part, ({ entered }) => entered);
      cells += part.rows * part.columns;
      if (cells < CELLS_A_REQUEST) continue;
      await context.sync();
      cells = 0;
    }
    await context.sync();
  });
}

const namedIn = (sheet: string, others: readonly Block[]) => [...new Set(others.map(part => `${sheet}!${addressOf(part)}`))];

/**
 * Puts back what cells held, those only that hold something else now.
 * @returns the cells that could not be put back, rows of a block together; a sheet that cannot be read any more by its name
 */
export async function putBackCells(changes: readonly Change[], ids: SheetIds, standing: CellsBefore): Promise<readonly string[]> {
  const left: string[] = [];
  for (const [sheet, blocks] of changedBlocks(changes, ids)) {
    const before = standing.get(sheet);
    if (!before) continue;
    const id = ids.get(sheet)!;
    let others: readonly Block[] | undefined;
    try {
      others = await othersOn(id, blocks, before);
      if (others.length > 0) await putBack(id, others, before);
      if (others.length > 0) others = await othersOn(id, blocks, before);
    } catch {
      // What was different before the attempt is named: nothing better is known.
    }
    left.push(...(others ? namedIn(sheet, others) : [`sheet ${sheet}`]));
  }
  return left;
}
