import type { Decimal } from '../../core/units/decimal';
import type { CellValue, Change, RangeContent, Workbook } from '../../workbook/workbook';
import type { EntrySlot } from './entrySlot';

/** One cell before and after. */
export interface WrittenCell {
  readonly address: string;
  readonly before: CellValue;
  readonly after: number | string;
}

/** What an entry writes into its row. */
export interface SlotWriting {
  readonly sheet: string;
  readonly cells: readonly WrittenCell[];
}

/** What can be put into a cell again: an error value cannot, but no error is ever written over. */
const again = (cell: CellValue) => (typeof cell === 'object' ? '' : cell);

/** The cells that change: readings, and the dial where the row lacks it or the user corrected it. Cells that hold the same already are left alone. */
export function writingOf(slot: EntrySlot, readings: readonly Decimal[], dial?: Decimal): SlotWriting {
  const cells = slot.cells.map((address, index): WrittenCell => ({
    address,
    before: slot.standing[index]!,
    after: readings[index]!.toNumber(),
  }));
  const dialCell: readonly WrittenCell[] =
    dial && slot.dialCell ? [{ address: slot.dialCell, before: slot.dialStanding, after: dial.toNumber() }] : [];
  return { sheet: slot.sheet, cells: [...cells, ...dialCell].filter(({ before, after }) => before !== after) };
}

/** The changes of a writing. */
function changesOf({ sheet, cells }: SlotWriting): readonly Change[] {
  return cells.map(({ address, after }) => ({ kind: 'values', at: { sheet, address }, values: [[after]] }));
}

/** The changes that take a writing back. */
function undoOf({ sheet, cells }: SlotWriting): readonly Change[] {
  return cells.map(({ address, before }) => ({ kind: 'values', at: { sheet, address }, values: [[again(before)]] }));
}

/** What would be written over, in words; undefined where all cells are blank. */
export function overwritten({ cells }: SlotWriting): string | undefined {
  const full = cells.filter(({ before }) => before !== '');
  if (full.length === 0) return undefined;
  const changes = full.map(
    ({ address, before, after }) => `${address} holds ${typeof before === 'object' ? before.error : before}, new ${after}`,
  );
  return `${changes.join('; ')}. Press Enter again to replace, Escape to keep what stands there.`;
}

/** Something that a cell must still hold. */
export interface Expected {
  readonly address: string;
  readonly value: CellValue;
}

/** A cell that is formatted as text gives a number back as text. */
const same = (a: CellValue, b: CellValue) => wordsOf(a) === wordsOf(b);
const wordsOf = (cell: CellValue) => (typeof cell === 'object' ? cell.error : String(cell));

/** What the sheet must still hold before a writing, and what before it is taken back. */
function expectedBefore(slot: EntrySlot, { cells }: SlotWriting): readonly Expected[] {
  return [...slot.witness, ...cells.map(({ address, before }) => ({ address, value: before }))];
}

/** The first cell that no longer holds what is expected; undefined where all do. */
function changedCell(expected: readonly Expected[], now: readonly RangeContent[]): string | undefined {
  return expected.find(({ value }, index) => !same(now[index]!.values[0]![0]!, value))?.address;
}

async function standsElse(workbook: Workbook, sheet: string, expected: readonly Expected[]): Promise<string | undefined> {
  return changedCell(expected, await workbook.read(expected.map(({ address }) => ({ sheet, address }))));
}

/**
 * Writes an entry, unless the sheet changed since its row was read.
 * @throws Error with a sentence; nothing is written then
 */
export async function writeEntry(workbook: Workbook, slot: EntrySlot, writing: SlotWriting): Promise<void> {
  const changed = await standsElse(workbook, writing.sheet, expectedBefore(slot, writing));
  if (changed) throw new Error(`cell ${changed} of sheet ${writing.sheet} changed meanwhile. Read the rows again.`);
  await workbook.write(changesOf(writing));
}

/**
 * Takes an entry back, unless its cells changed since.
 * @throws Error with a sentence; nothing is written then
 */
export async function undoEntry(workbook: Workbook, writing: SlotWriting): Promise<void> {
  const expected = writing.cells.map(({ address, after }) => ({ address, value: after }));
  const changed = await standsElse(workbook, writing.sheet, expected);
  if (changed) throw new Error(`Not undone: cell ${changed} of sheet ${writing.sheet} changed since it was written.`);
  await workbook.write(undoOf(writing));
}
