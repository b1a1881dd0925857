import type { Catalogue } from '../../core/catalogue/catalogue';
import { requirePlausibleTolerance } from '../../core/crimp/crimpTolerance';
import type { TradeError } from '../../core/tradeError';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { numberFromText } from '../../core/units/numberText';
import { columnLetters } from '../../host/a1';
import { unitOfHeading } from '../sheets/lengthCell';
import { cellOf, dataRows, sheetRow, textOf } from '../sheets/sheetTable';
import { crimpData, type CrimpData } from './crimpSource';
import type { EntrySlot, Sourced } from './entrySlot';
import { crimpColumn, endsOfRow, readingColumns, type EndLetter, type EntryTable } from './entryTable';
import { SlotReader } from './slotReader';
import { settingsAbove, type FoundSetting, type SettingAbove } from './settingsAbove';

/** What the user says where neither the sheet nor the catalogue does; texts as typed, "" = not said. */
export interface EntryDefaults {
  readonly unit: LengthUnit;
  readonly machine: string;
  readonly tolerance: string;
  readonly maxSpread: string;
  readonly step: string;
  readonly lowest: string;
  readonly highest: string;
  readonly largestMove: string;
}

/** Where slots are read from. */
export interface SlotSources {
  readonly table: EntryTable;
  readonly defaults: EntryDefaults;
  readonly catalogue?: Catalogue | undefined;
}

function defaultOf(text: string): Sourced | undefined {
  const found = numberFromText(text);
  return found && { value: found.value, from: 'your setting' };
}

type Above = ReturnType<typeof settingsAbove>;

function aboveOf(reader: SlotReader, above: Above, setting: SettingAbove): Sourced | undefined {
  const found: FoundSetting | undefined = above[setting];
  return found && reader.number(setting, found.cell, found.unit, found.label);
}

/** Target and tolerance of a row: its own columns, the limits' middle, the setting above the table, the catalogue. */
function crimpNumbers(reader: SlotReader, above: Above, data: CrimpData, defaults: EntryDefaults) {
  const [smallest, largest] = (['smallest', 'largest'] as const).map(field => reader.ofRow(field, reader.column(field)));
  const middle = smallest && largest && { value: smallest.value.plus(largest.value).div(2), from: smallest.from };
  const half = smallest && largest && { value: largest.value.minus(smallest.value).div(2), from: smallest.from };
  const target = reader.ofRow('target', reader.column('target')) ?? middle ?? data.target;
  const tolerance =
    reader.ofRow('tolerance', reader.column('tolerance')) ??
    half ??
    aboveOf(reader, above, 'tolerance') ??
    data.tolerance ??
    defaultOf(defaults.tolerance);
  const maxSpread =
    reader.ofRow('maxSpread', reader.column('maxSpread')) ??
    aboveOf(reader, above, 'maxSpread') ??
    data.maxSpread ??
    defaultOf(defaults.maxSpread);
  return { target, tolerance, maxSpread };
}

/** What of the sheet and of the catalogue does not agree: the sheet counts, the user is told. */
function disagreements(own: { target: Sourced | undefined; tolerance: Sourced | undefined }, data: CrimpData): string[] {
  return (['target', 'tolerance'] as const).flatMap(name => {
    const [sheet, catalogue] = [own[name], data[name]];
    if (!sheet || !catalogue || sheet.value.eq(catalogue.value)) return [];
    return [`The ${name} here is ${sheet.value} (${sheet.from}), the Catalogue says ${catalogue.value}: the sheet’s counts.`];
  });
}

function problemOf(reader: SlotReader, target: Sourced | undefined, tolerance: Sourced | undefined, data: CrimpData) {
  if (reader.problem) return reader.problem;
  const why = data.problem ? ` (${data.problem})` : '';
  if (!target) return `There is no target diameter in this row${why}.`;
  if (!tolerance) return `There is no tolerance for this row${why}: add a column Tolerance, or enter it under Settings.`;
  try {
    requirePlausibleTolerance(target.value, tolerance.value);
    return undefined;
  } catch (error) {
    return (error as TradeError).message;
  }
}

function namesOf(table: EntryTable, row: number, end: EndLetter) {
  const own = textOf(table, row, 'end');
  const letter = end || own;
  const isB = /^(?:b|2|right|far)$/i.test(letter);
  const fitting = textOf(table, row, 'fitting') || textOf(table, row, isB ? 'fittingB' : 'fittingA');
  const hose = textOf(table, row, 'hose');
  const combination = textOf(table, row, 'combination') || [hose, fitting].filter(Boolean).join(' with ');
  const [line, assembly, piece] = (['line', 'assembly', 'piece'] as const).map(field => textOf(table, row, field));
  const title =
    [line && `Line ${line}`, assembly && `assembly ${assembly}`, piece && `piece ${piece}`].filter(Boolean).join(', ') ||
    `Row ${sheetRow(table, row)}`;
  return { end: letter, hose, fitting, combination, line: line!, assembly: assembly!, piece: piece!, title };
}

const NAMING = ['line', 'assembly', 'piece', 'hose', 'combination', 'end', 'fitting', 'fittingA', 'fittingB', 'target'] as const;

function cellsOf(table: EntryTable, row: number, end: EndLetter) {
  const columns = readingColumns(table, end);
  const address = (column: number) => `${columnLetters(table.content.column + column)}${sheetRow(table, row)}`;
  const isFormula = (column: number) => (table.content.formulas[row]?.[column] ?? '') !== '';
  const dialKey = crimpColumn(table, 'dial', end);
  const dial = dialKey && table.columns[dialKey]!.index;
  return {
    cells: columns.map(address),
    standing: columns.map(column => table.content.values[row]![column]!),
    formulaCells: columns.filter(isFormula).map(address),
    dialCell: dial === undefined || isFormula(dial) ? undefined : address(dial),
    dialStanding: dial === undefined ? '' : table.content.values[row]![dial]!,
    witness: NAMING.flatMap(field => {
      const column = table.columns[field];
      return column ? [{ address: address(column.index), value: table.content.values[row]![column.index]! }] : [];
    }),
  };
}

function readSlot({ table, defaults, catalogue }: SlotSources, above: Above, row: number, end: EndLetter): EntrySlot {
  const firstReading = readingColumns(table, end)[0]!;
  const heading = Object.values(table.columns).find(column => column?.index === firstReading)!;
  const targetKey = crimpColumn(table, 'target', end);
  const targetUnit = targetKey && unitOfHeading(table.columns[targetKey]!.unit);
  const unit = unitOfHeading(heading.unit) ?? targetUnit ?? defaults.unit;
  const reader = new SlotReader(table, row, end, unit);
  const names = namesOf(table, row, end);
  const machine = textOf(table, row, 'machine') || defaults.machine.trim();
  const ownDie = reader.text('die');
  const data = catalogue ? crimpData(catalogue, names.hose, names.fitting, machine, unit, ownDie) : {};
  const { target, tolerance, maxSpread } = crimpNumbers(reader, above, data, defaults);
  const ofMachine = (setting: 'step' | 'lowest' | 'highest' | 'largestMove') =>
    reader.ofRow(setting, setting) ?? aboveOf(reader, above, setting) ?? data[setting] ?? defaultOf(defaults[setting]);
  const slot = {
    sheet: table.content.sheet,
    row: sheetRow(table, row),
    ...names,
    ...cellsOf(table, row, end),
    order: textOf(table, row, 'order'),
    operator: textOf(table, row, 'operator'),
    date: cellOf(table, row, 'date'),
    machine,
    die: ownDie || data.die || '',
    hoseLot: reader.text('hoseLot'),
    fittingLot: reader.text('fittingLot'),
    unit,
    target,
    tolerance,
    maxSpread,
    dial: reader.ofRow('dial', reader.column('dial')) ?? data.dial,
    step: ofMachine('step'),
    lowest: ofMachine('lowest'),
    highest: ofMachine('highest'),
    largestMove: ofMachine('largestMove'),
    notes: disagreements({ target, tolerance }, data),
  };
  return { ...slot, problem: problemOf(reader, target, tolerance, data) };
}

/** A row is a crimp where it names its parts or target, or holds readings. */
function isCrimpRow(slot: EntrySlot): boolean {
  return slot.combination !== '' || slot.target !== undefined || slot.standing.some(cell => typeof cell === 'number');
}

/** The crimps of a table in the order of its rows, both ends of a row one after the other. */
export function readSlots(sources: SlotSources, picked?: ReadonlySet<number>): readonly EntrySlot[] {
  const { table } = sources;
  const above = settingsAbove(table);
  const ends = endsOfRow(table);
  return dataRows(table)
    .filter(row => !picked || picked.has(sheetRow(table, row)))
    .flatMap(row => ends.map(end => readSlot(sources, above, row, end)))
    .filter(isCrimpRow);
}
