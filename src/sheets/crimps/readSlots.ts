import type { Catalogue } from '../../core/catalogue/catalogue';
import { requirePlausibleTolerance } from '../../core/crimp/crimpTolerance';
import { TradeError } from '../../core/tradeError';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { numberFromText } from '../../core/units/numberText';
import type { RangeContent } from '../../workbook/workbook';
import { cellOf } from '../table/findTable';
import { crimpCells, type CrimpCells } from './crimpCells';
import type { LocatedMeasurements } from './locateMeasurements';
import { settingsAbove, type SettingName, type SettingsAbove } from './settingsAbove';
import { crimpData, type CrimpData } from './crimpSource';
import type { EntrySlot, Sourced } from './entrySlot';
import { addressOfCell, SlotReader } from './slotReader';

/** What the user says where neither the sheet nor the catalogue does; texts as typed, "" = not said. */
export interface EntryDefaults {
  readonly machine: string;
  readonly tolerance: string;
  readonly largestSpread: string;
  readonly step: string;
  readonly lowest: string;
  readonly highest: string;
  readonly largestMove: string;
}

/** Where slots are read from. */
export interface SlotSources extends LocatedMeasurements {
  readonly used: RangeContent;
  readonly unit: LengthUnit;
  readonly defaults: EntryDefaults;
  readonly catalogue?: Catalogue | undefined;
  /** Rows of the sheet as it shows them; undefined = the whole table. */
  readonly picked?: ReadonlySet<number> | undefined;
}

/** Readings of a crimp where each has a row of its own. */
const READINGS_A_CRIMP = 4;

function defaultOf(text: string): Sourced | undefined {
  const found = numberFromText(text);
  return found && { value: found.value, from: 'your setting' };
}

function aboveOf(above: SettingsAbove, name: SettingName): Sourced | undefined {
  const value = above[name];
  return value && { value, from: 'above the table' };
}

/** Target, tolerance and spread of a row: its own columns, the limits' middle, what stands above the table, the catalogue. */
function crimpNumbers(reader: SlotReader, above: SettingsAbove, data: CrimpData, defaults: EntryDefaults) {
  const [smallest, largest] = [reader.length('smallest'), reader.length('largest')];
  const middle = smallest && largest && { value: smallest.value.plus(largest.value).div(2), from: smallest.from };
  const half = smallest && largest && { value: largest.value.minus(smallest.value).div(2), from: smallest.from };
  const tolerance = reader.length('tolerance') ?? half ?? aboveOf(above, 'tolerance');
  const spread = reader.length('largestSpread') ?? aboveOf(above, 'largestSpread') ?? data.maxSpread;
  return {
    target: reader.length('target') ?? middle ?? aboveOf(above, 'target') ?? data.target,
    tolerance: tolerance ?? data.tolerance ?? defaultOf(defaults.tolerance),
    maxSpread: spread ?? defaultOf(defaults.largestSpread),
  };
}

function machineNumbers(reader: SlotReader, above: SettingsAbove, data: CrimpData, defaults: EntryDefaults) {
  const digits = (name: 'lowest' | 'highest' | 'largestMove') =>
    reader.digits(name) ?? aboveOf(above, name) ?? data[name] ?? defaultOf(defaults[name]);
  return {
    dial: reader.digits('dial') ?? data.dial,
    step: reader.step() ?? aboveOf(above, 'step') ?? data.step ?? defaultOf(defaults.step),
    lowest: digits('lowest'),
    highest: digits('highest'),
    largestMove: digits('largestMove'),
  };
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
    if (error instanceof TradeError) return error.message;
    throw error;
  }
}

function namesOf(reader: SlotReader, end: string, row: number) {
  const [hose, fitting] = [reader.text('hose'), reader.text('fitting')];
  const combination = reader.text('combination') || [hose, fitting].filter(Boolean).join(' with ');
  const [assembly, piece] = [reader.extraText('assembly'), reader.extraText('piece')];
  const first = reader.text('line');
  const line = reader.extraText('lineNumber') || (first === assembly || first === piece ? '' : first);
  const named = [line && `Line ${line}`, assembly && `assembly ${assembly}`, piece && `piece ${piece}`]
    .filter(Boolean)
    .join(', ');
  return { end, hose, fitting, combination, line, assembly, piece, title: named || `Row ${row + 1}` };
}

const NAMING = ['line', 'hose', 'combination', 'end', 'fitting', 'target'] as const;

function cellsOf(reader: SlotReader, { used }: SlotSources, { readings, cells }: CrimpCells) {
  const { dial } = cells;
  return {
    cells: readings.map(addressOfCell),
    standing: readings.map(({ row, column }) => cellOf(used, row, column)),
    formulaCells: readings.filter(place => reader.isFormula(place)).map(addressOfCell),
    dialCell: dial && !reader.isFormula(dial) ? addressOfCell(dial) : undefined,
    dialStanding: reader.cell('dial'),
    witness: NAMING.flatMap(field => {
      const place = cells[field];
      return place ? [{ address: addressOfCell(place), value: reader.cell(field) }] : [];
    }),
  };
}

function readSlot(sources: SlotSources, above: SettingsAbove, crimp: CrimpCells): EntrySlot {
  const { used, table, unit, defaults, catalogue } = sources;
  const end = crimp.end || new SlotReader(used, table, crimp, '', unit).text('end');
  const reader = new SlotReader(used, table, crimp, end, unit);
  const names = namesOf(reader, end, crimp.row);
  const machine = reader.text('machine') || defaults.machine.trim();
  const ownDie = reader.text('die');
  const data = catalogue ? crimpData(catalogue, names.hose, names.fitting, machine, unit, ownDie) : {};
  const { target, tolerance, maxSpread } = crimpNumbers(reader, above, data, defaults);
  const numbers = machineNumbers(reader, above, data, defaults);
  return {
    sheet: table.sheet,
    row: crimp.row + 1,
    ...names,
    ...cellsOf(reader, sources, crimp),
    order: reader.extraText('order'),
    operator: reader.extraText('operator'),
    date: reader.cell('date'),
    machine,
    die: ownDie || data.die || '',
    dieStanding: ownDie,
    hoseLot: reader.extraText('hoseLot'),
    hoseMade: reader.extra('hoseMade'),
    fittingLot: reader.extraText('fittingLot'),
    unit,
    target,
    tolerance,
    maxSpread,
    ...numbers,
    notes: disagreements({ target, tolerance }, data),
    problem: problemOf(reader, target, tolerance, data),
  };
}

/** A row is a crimp where it names its parts or target, or holds readings. */
function isCrimp(slot: EntrySlot): boolean {
  return slot.combination !== '' || slot.target !== undefined || slot.standing.some(cell => typeof cell === 'number');
}

/** The crimps of a table in the order of its rows, both ends of a row one after the other. */
export function readSlots(sources: SlotSources): readonly EntrySlot[] {
  const { used, table, proposed, picked, unit } = sources;
  const above = settingsAbove(used, table, unit);
  return crimpCells(used, table, proposed, READINGS_A_CRIMP, picked)
    .filter(({ readings }) => readings.length >= 2)
    .map(crimp => readSlot(sources, above, crimp))
    .filter(isCrimp);
}
