import { splitHeading } from '../../core/units/headingUnit';
import { measureFromText } from '../../core/units/measureText';
import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { hasDecimalComma } from '../../core/units/numberText';
import { columnLetters } from '../../workbook/a1';
import type { CellValue } from '../../workbook/workbook';
import { nameOfCell } from '../../cells/sheetCell';
import type { FoundTable } from '../table/findTables';
import { statedUnit } from '../table/heading';
import type { KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { correctionKey } from '../table/headingCorrections';
import { sizeBeside } from '../table/sizedHose';
import { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import type { CrimpColumns } from './crimpColumns';
import { crimpMeasures, isReadingRole, type CrimpRole } from './crimpRoles';
import { limitColumns, type LimitColumns } from './limitColumns';
import { wholeWidth } from './crimpText';
import { settingsAbove, statedAbove, type SettingsAbove } from './settingsAbove';

/** A table of crimps: what its columns are, a reader of its rows, and what is stated above it. */
export interface CrimpTable extends CrimpColumns {
  readonly table: FoundTable;
  readonly reader: TableReader<CrimpRole>;
  readonly questions: readonly TableQuestion[];
  /** Unit of its readings; undefined where nothing says it. */
  readonly unit: MeasureUnit | undefined;
  /** What their size suggests: only proposed. */
  readonly likelyUnit: MeasureUnit;
  readonly above: SettingsAbove;
  /** `Min` and `Max` that may be limits. */
  readonly bareLimits: LimitColumns['bare'];
  /** How columns were taken, where somebody might think otherwise. */
  readonly notes: readonly string[];
  /** The machine whose name stands above the table; "" where none does. */
  readonly machineAbove: string;
}

/** Remarks in brackets that are no units. */
const NO_UNIT = /^(?:(?:end )?[ab]|\d{1,3} ?(?:°|deg)|±|\+\/?-|measured|actual|nominal|digits?)$/i;

/** Columns without a heading get one to be asked about and corrected by; remarks that are no units go. */
function readable({ headings, block, ...table }: FoundTable): FoundTable {
  const texts = headings.map((heading, index) => {
    if (heading === '') return `column ${columnLetters(block.column + index)}`;
    const { name, bracket } = splitHeading(heading);
    if (bracket === undefined || !NO_UNIT.test(bracket)) return heading;
    const end = /^(?:end )?([ab])$/i.exec(bracket)?.[1];
    return end ? `${name} ${end.toUpperCase()}` : name;
  });
  return { ...table, block, headings: texts };
}

/** Crimp diameters below this are in inches: hydraulic crimps measure from about 8 mm, and no more than about 4 in. */
const INCHES_BELOW = 6;
/** Above this they are in thousandths of an inch: 200 of them are 5 mm, and no crimp measures 200 mm. */
const THOU_ABOVE = 200;
const unitOfSize = (value: number) => (value < INCHES_BELOW ? 'in' : value > THOU_ABOVE ? 'thou' : 'mm');

/** Readings by whose size a unit is proposed: one of them may be a slip of the hand. */
const SIZED = 9;

/** The unit that the size of the first readings suggests: only proposed. */
function likelyUnit(
  cells: SheetCells,
  { block }: FoundTable,
  columns: readonly number[],
  ofCatalogue: MeasureUnit = measureUnit('length', 'mm')!,
): MeasureUnit {
  const first: number[] = [];
  for (let row = block.row + 1; row < block.row + block.rows && first.length < SIZED; row++) {
    const values = columns.map(column => cells.value(row, column));
    first.push(...values.filter(value => typeof value === 'number').filter(value => value > 0));
  }
  const middle = first.sort((a, b) => a - b)[Math.floor(first.length / 2)];
  return middle === undefined ? ofCatalogue : measureUnit('length', unitOfSize(middle))!;
}

/** Readings that are yet to be entered need a unit, too. */
function unitQuestion(reader: TableReader<CrimpRole>, proposal: MeasureUnit): TableQuestion {
  const heading = reader.heading('reading1');
  const column = `${columnLetters(reader.columns.reading1!)}: ${heading}`;
  return {
    asked: 'unit',
    heading,
    column,
    sentence: `Column ${column} has no unit. Which is it?`,
    choices: ['mm', 'in'].map(value => ({ value, label: value })),
    proposal: proposal.symbol,
  };
}

const TARGETS = (['target', 'smallest', 'largest'] as const).flatMap(role => [role, `${role}A`, `${role}B`] as const);

interface Answering {
  readonly cells: SheetCells;
  readonly table: FoundTable;
  readonly readings: readonly number[];
  readonly diameters: readonly number[];
  /** Columns of whole diameters, unlike tolerances and steps. */
  readonly targets: readonly number[];
  readonly unitAbove: MeasureUnit | undefined;
}

/** The unit that all readings carry in their own cells; undefined where one carries none, or another. */
function unitOfCells(filled: readonly CellValue[]): MeasureUnit | undefined {
  const units = filled.map(cell => (typeof cell === 'string' ? measureFromText('length', cell, 'decimal')?.unit : undefined));
  return new Set(units).size === 1 ? units[0] : undefined;
}

/** Readings side by side are one thing: what is known of the unit and the commas of one holds for all. */
function shared({ cells, table, readings, diameters, targets, unitAbove }: Answering, said: TableAnswers): TableAnswers {
  const heading = (column: number) => table.headings[column - table.block.column]!;
  const key = (column: number) => correctionKey(heading(column));
  const comma = new Map(said.comma);
  const unit = new Map(said.unit);
  const rows = Array.from({ length: table.block.rows - 1 }, (_, i) => table.block.row + 1 + i);
  const texts = readings.flatMap(column => rows.map(row => cells.value(row, column)).filter(cell => typeof cell === 'string'));
  const answer =
    readings.map(column => said.comma.get(key(column))).find(Boolean) ??
    (texts.some(text => hasDecimalComma(text)) ? 'decimal' : undefined);
  if (answer) for (const column of readings) comma.set(key(column), answer);
  const filled = readings.flatMap(column => rows.map(row => cells.value(row, column)).filter(cell => cell !== ''));
  const unitOf = unitAbove ?? unitOfCells(filled);
  const isStated = diameters.some(column => unit.has(key(column)) || statedUnit(heading(column), 'length').unit);
  if (!isStated && unitOf && readings[0] !== undefined) unit.set(key(readings[0]), unitOf.symbol);
  // A tolerance in thousandths says nothing of diameters beside it; a diameter does.
  const whole = [...readings, ...targets];
  const unitIn = (column: number) => unit.get(key(column)) ?? statedUnit(heading(column), 'length').unit?.symbol;
  const units = new Set(whole.flatMap(column => unitIn(column) ?? []));
  const open = whole.filter(column => unitIn(column) === undefined);
  if (units.size === 1 && units.has('thou')) for (const column of open) unit.set(key(column), 'thou');
  return { ...said, comma, unit };
}

/** One question is enough for all readings, and for the diameters beside them. */
function askedOnce(reader: TableReader<CrimpRole>): TableQuestion[] {
  const isReading = ({ heading }: TableQuestion) =>
    Object.keys(reader.columns).some(role => isReadingRole(role) && reader.heading(role) === heading);
  const kinds = new Set<string>();
  return [...reader.questions]
    .sort((a, b) => Number(isReading(b)) - Number(isReading(a)))
    .filter(question => {
      const { asked, sentence } = question;
      const kind =
        asked === 'unit' && /has no unit/.test(sentence) ? 'unit' : asked === 'comma' && isReading(question) ? 'comma' : '';
      if (kind === '' || !kinds.has(kind)) return !!kinds.add(kind || sentence);
      return false;
    });
}

/** Columns of tolerances that are halved: a column of ± beside them counts before them. */
const halved = (roles: readonly CrimpRole[]) =>
  roles.filter(role => /^toleranceWidth/.test(role) && !roles.includes(role.replace('Width', '') as CrimpRole));

/** A machine of the catalogue whose name stands above the table, the nearest first. */
function machineAbove(cells: SheetCells, { block }: FoundTable, isMachine: KnownParts['isMachine']): string {
  for (let row = block.row - 1; isMachine && row >= cells.used.row; row--) {
    for (let column = cells.used.column; column <= cells.lastColumn; column++) {
      const name = nameOfCell(cells.value(row, column));
      if (name !== '' && isMachine(name)) return name;
    }
  }
  return '';
}

/**
 * A table as crimps; one without a column of readings has no readings.
 * @param others other tables of the sheet, which say nothing about this one
 * @param ofCatalogue unit of the catalogue's diameters: only proposed
 */
export function crimpTable(
  cells: SheetCells,
  found: FoundTable,
  said: TableAnswers,
  parts: KnownParts = {},
  others: readonly FoundTable[] = [],
  ofCatalogue?: MeasureUnit,
): CrimpTable {
  const table = readable(found);
  const stated = statedAbove(cells, found, others);
  const above = new Set(stated.map(({ name }) => name));
  const { found: columns, bare: bareLimits, notes } = limitColumns(cells, table, said, parts, above);
  const roles = Object.keys(columns.columns) as CrimpRole[];
  const measures = crimpMeasures(roles);
  const readings = roles.filter(isReadingRole).map(role => columns.columns[role]!);
  const diameters = (Object.keys(measures) as CrimpRole[]).map(role => columns.columns[role]!);
  const units = new Set(stated.flatMap(({ name, unit }) => (unit && name !== 'lowest' ? [unit] : [])));
  const unitAbove = units.size === 1 ? [...units][0] : undefined;
  const targets = TARGETS.flatMap(role => columns.columns[role] ?? []);
  const answers = shared({ cells, table, readings, diameters, targets, unitAbove }, said);
  const likely = likelyUnit(cells, table, readings, ofCatalogue);
  const numbers = (['dial', 'dialA', 'dialB', 'lowest', 'highest', 'largestMove'] as const).filter(role => roles.includes(role));
  const reader = new TableReader<CrimpRole>(cells, table, columns.columns, measures, answers, { length: likely }, numbers, {
    hose: sizeBeside(cells, table, columns.columns.hose, parts.isHose),
  });
  const unit = readings.length > 0 ? reader.unitOf('reading1') : undefined;
  const questions = askedOnce(reader);
  const isOpen = readings.length > 0 && !unit && questions.every(({ asked }) => asked !== 'unit');
  return {
    ...columns,
    table,
    reader,
    questions: isOpen ? [unitQuestion(reader, likely), ...questions] : questions,
    unit,
    likelyUnit: likely,
    above: settingsAbove(cells, stated, unit),
    bareLimits,
    notes: [...notes, ...halved(roles).map(role => wholeWidth(reader.heading(role)))],
    machineAbove: machineAbove(cells, found, parts.isMachine),
  };
}

/** How many columns of readings the table has in all. */
export const readingsIn = ({ readings }: Pick<CrimpColumns, 'readings'>): number => readings[0] + readings[1];
