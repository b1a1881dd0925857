import type { Decimal } from '../../core/units/decimal';
import { isDateFormat } from '../../core/units/sheetDate';
import { isoDate } from '../../core/units/sheetDate';
import type { CellValue, Change, RangeContent, Workbook } from '../../workbook/workbook';
import { correctionChanges } from './correctionLog';
import { hasAllReadings, type CellInSheet, type CrimpRow } from './crimpRow';
import type { EntryWriting, EnteredCell } from './entryWriting';
import { cellWords, plainValue } from '../../workbook/cellWords';
import { DATE_FORMAT } from '../print/dateFormat';

/** What is filled in beside the readings. */
export interface EntryFacts {
  readonly dial: Decimal | undefined;
  readonly operator: string;
  /** Day and time as the sheet's number. */
  readonly moment: number | undefined;
}

/** What can be put into a cell again: an error value cannot, but no error is ever written over. */
const again = (cell: CellValue) => (typeof cell === 'object' ? '' : cell);

const isBlank = (cell: CellInSheet | undefined): cell is CellInSheet => cell !== undefined && cell.value === '';

const clock = (moment: number) => {
  const minutes = Math.floor((moment % 1) * 1440 + 1e-6);
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
};

/** Day and time in their own columns; the time with the day where its cell shows times and has no neighbour for them. */
function momentCells({ date, time }: CrimpRow['fields'], moment: number): EnteredCell[] {
  const cells: EnteredCell[] = [];
  const isTimed = date !== undefined && !time && /h/i.test(date.format);
  if (isBlank(date)) {
    const { address, format } = date;
    const day = isTimed ? moment : Math.floor(moment);
    if (format === '@') cells.push({ address, before: '', after: isoDate(moment) });
    else cells.push({ address, before: '', after: day, ...(!isDateFormat(format) && { format: DATE_FORMAT }) });
  }
  if (isBlank(time)) cells.push({ address: time.address, before: '', after: clock(moment) });
  return cells;
}

/**
 * The cells that change: readings, the dial, and day, time, operator and die where their cells are blank. A correction fills in none of those:
 * it is made later, and maybe by somebody else, than the crimp.
 */
export function entryWriting(row: CrimpRow, readings: readonly Decimal[], { dial, operator, moment }: EntryFacts): EntryWriting {
  const { fields } = row;
  const cells = row.cells.map(({ address, value }, index): EnteredCell => ({
    address,
    before: value,
    after: readings[index]!.toNumber(),
  }));
  const filled = (cell: CellInSheet | undefined, after: string): EnteredCell[] =>
    isBlank(cell) && after !== '' ? [{ address: cell.address, before: '', after }] : [];
  const all: EnteredCell[] = [
    ...cells,
    ...(dial && fields.dial ? [{ address: fields.dial.address, before: fields.dial.value, after: dial.toNumber() }] : []),
    ...(hasAllReadings(row)
      ? []
      : [
          ...filled(fields.die, row.wantedDie),
          ...filled(fields.operator, operator.trim()),
          ...(moment === undefined ? [] : momentCells(fields, moment)),
        ]),
  ];
  return { sheet: row.sheet, cells: all.filter(({ before, after }) => !same(before, after)) };
}

/** The row as it is once that is written. */
export function rowAfter(row: CrimpRow, { cells }: EntryWriting, readings: readonly Decimal[]): CrimpRow {
  const after = (cell: CellInSheet): CellInSheet => {
    const written = cells.find(({ address }) => address === cell.address);
    return written ? { ...cell, value: written.after } : cell;
  };
  const fields = Object.fromEntries(Object.entries(row.fields).map(([field, cell]) => [field, after(cell)]));
  return { ...row, cells: row.cells.map(after), readings, fields, readingProblem: undefined };
}

/** Another crimp once that is written: both ends of an assembly may share the cells of day and operator. */
export function besideAfter(row: CrimpRow, { sheet, cells }: EntryWriting): CrimpRow {
  const shares = (cell: CellInSheet) => cells.some(({ address }) => address === cell.address);
  if (row.sheet !== sheet || !Object.values(row.fields).some(shares)) return row;
  const fields = Object.fromEntries(
    Object.entries(row.fields).map(([field, cell]) => {
      const written = cells.find(({ address }) => address === cell.address);
      return [field, written ? { ...cell, value: written.after } : cell];
    }),
  );
  return { ...row, fields };
}

/** The changes of a writing. */
function changesOf({ sheet, cells }: EntryWriting): readonly Change[] {
  return cells.flatMap(({ address, after, format }): Change[] => [
    ...(format ? [{ kind: 'format' as const, at: { sheet, address }, numberFormat: format }] : []),
    { kind: 'values', at: { sheet, address }, values: [[after]] },
  ]);
}

/** The changes that take a writing back. */
function undoOf({ sheet, cells }: EntryWriting): readonly Change[] {
  return cells.map(({ address, before }) => ({ kind: 'values', at: { sheet, address }, values: [[again(before)]] }));
}

/** What would be written over, in words; undefined where all cells are blank. */
export function overwritten({ cells }: EntryWriting): string | undefined {
  const full = cells.filter(({ before }) => before !== '');
  if (full.length === 0) return undefined;
  const changes = full.map(({ address, before, after }) => `${address} holds ${plainValue(before)}, new ${after}`);
  return `${changes.join('; ')}. Press Enter again to replace (the old values are kept in the sheet Corrections), Escape to leave them.`;
}

/** Something that a cell must still hold. */
export interface ExpectedCell {
  readonly address: string;
  readonly value: CellValue;
}

/** A cell that is formatted as text gives a number back as text. */
const same = (a: CellValue, b: CellValue) => cellWords(a).trim() === cellWords(b).trim();

/** What the sheet must still hold before a writing. */
function expectedBefore(row: CrimpRow, { cells }: EntryWriting): readonly ExpectedCell[] {
  return [...row.witness, ...cells.map(({ address, before }) => ({ address, value: before }))];
}

/** The first cell that no longer holds what is expected; undefined where all do. */
function changedCell(expected: readonly ExpectedCell[], now: readonly RangeContent[]): string | undefined {
  return expected.find(({ value }, index) => !same(now[index]!.values[0]![0]!, value))?.address;
}

async function holdsElse(workbook: Workbook, sheet: string, expected: readonly ExpectedCell[]): Promise<string | undefined> {
  return changedCell(expected, await workbook.read(expected.map(({ address }) => ({ sheet, address }))));
}

/**
 * Writes an entry, unless the sheet changed since its row was read; what it replaces is kept in the sheet Corrections.
 * @throws Error with a sentence; nothing is written then
 */
export async function writeEntry(
  workbook: Workbook,
  row: CrimpRow,
  writing: EntryWriting,
  by: string,
  moment: number,
): Promise<void> {
  const changed = await holdsElse(workbook, writing.sheet, expectedBefore(row, writing));
  if (changed) throw new Error(`cell ${changed} of sheet ${writing.sheet} changed meanwhile. Read the rows again.`);
  await workbook.write([...changesOf(writing), ...(await correctionChanges(workbook, row, writing, { by, moment, note: '' }))]);
}

/**
 * Takes an entry back, unless its cells changed since.
 * @throws Error with a sentence; nothing is written then
 */
export async function undoEntry(
  workbook: Workbook,
  row: CrimpRow,
  writing: EntryWriting,
  by: string,
  moment: number,
): Promise<void> {
  const expected = writing.cells.map(({ address, after }) => ({ address, value: after }));
  const changed = await holdsElse(workbook, writing.sheet, expected);
  if (changed) throw new Error(`Not undone: cell ${changed} of sheet ${writing.sheet} changed since it was written.`);
  const replaced = writing.cells.filter(({ before }) => before !== '');
  const back = replaced.map(({ address, before, after }) => ({
    address,
    before: after,
    after: again(before) as string | number,
  }));
  const note = 'correction taken back';
  const log = await correctionChanges(workbook, row, { ...writing, cells: back }, { by, moment, note });
  await workbook.write([...undoOf(writing), ...log]);
}
