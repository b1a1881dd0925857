import { Decimal } from '../units/decimal';
import { convertMeasure, measureUnit } from '../units/measureUnit';
import type { CatalogueUnits } from './catalogueUnits';
import { cellNumber } from './cellNumber';
import { splitHeading } from './headings';
import { headingKey, partKey } from './partName';
import type { ReadRow } from './readRows';
import type { TableSchema } from './tableSchema';
import { catalogueTables, type TableName } from './tables/catalogueTables';

/** What checking a row needs to know besides the row. */
export interface RowContext {
  readonly units: CatalogueUnits;
  /** Crimp range of each die by its key; the second number is the largest. */
  readonly dieRanges: ReadonlyMap<string, readonly [number, number]>;
}

const numberOf = (row: ReadRow, key: string) => row.values[key] as number | undefined;
const textOf = (row: ReadRow, key: string) => row.values[key] as string | undefined;

function addProblem(schema: TableSchema, row: ReadRow, key: string, received: string, expected: string): void {
  row.problems.push({ sheet: schema.sheet, row: row.row, column: schema.fields[key]!.heading, received, expected });
}

const shown = (value: number | string | undefined) => (value === undefined ? 'blank' : String(value));

/** Tolerance within 1/2000 … 1/10 of the diameter; decimals only where doubles could err. */
function isPlausible(diameter: number, tolerance: number): boolean {
  const share = tolerance / diameter;
  if (share > 1 / 1999 && share < 1 / 10.01) return true;
  return new Decimal(tolerance).times(2000).gte(diameter) && new Decimal(tolerance).times(10).lte(diameter);
}

/**
 * Diameter and tolerance from the two limits, where they stand so: their middle and half their distance. A diameter that stands beside them
 * without a tolerance may lie anywhere between them, as one-sided limits have it; the limits count.
 */
function fillDiameter(row: ReadRow): void {
  const smallest = numberOf(row, 'smallestDiameter');
  const largest = numberOf(row, 'largestDiameter');
  const schema = catalogueTables.crimps;
  if (smallest === undefined || largest === undefined) {
    for (const key of ['crimpDiameter', 'tolerance']) {
      if (numberOf(row, key) === undefined && !row.unread?.[key]) {
        addProblem(schema, row, key, 'blank', 'a number (or smallest and largest diameter)');
      }
    }
    return;
  }
  if (smallest > largest)
    return addProblem(schema, row, 'smallestDiameter', shown(smallest), `no more than the largest, ${largest}`);
  const middle = cellNumber(new Decimal(smallest).plus(largest).div(2));
  const half = cellNumber(new Decimal(largest).minus(smallest).div(2));
  for (const [key, value] of [
    ['crimpDiameter', middle],
    ['tolerance', half],
  ] as const) {
    const stated = numberOf(row, key);
    const oneSided = key === 'crimpDiameter' && numberOf(row, 'tolerance') === undefined && !row.unread?.tolerance;
    const agrees = stated === undefined || stated === value || (oneSided && stated >= smallest && stated <= largest);
    if (!agrees) addProblem(schema, row, key, shown(stated), `${value}, as the two limits give it`);
    row.values[key] = value;
  }
}

function refuseBareStar(schema: TableSchema, row: ReadRow): void {
  if (/^\*+$/.test(textOf(row, 'fitting') ?? '')) {
    addProblem(schema, row, 'fitting', '"*"', 'a part, or the beginning of its name and *');
  }
}

function finishCrimp(row: ReadRow, { dieRanges }: RowContext): void {
  const schema = catalogueTables.crimps;
  refuseBareStar(schema, row);
  fillDiameter(row);
  const diameter = numberOf(row, 'crimpDiameter');
  const tolerance = numberOf(row, 'tolerance');
  if (diameter === undefined || tolerance === undefined) return;
  if (!isPlausible(diameter, tolerance)) {
    addProblem(schema, row, 'tolerance', shown(tolerance), `between 1/2000 and 1/10 of the crimp diameter ${diameter}`);
  }
  const range = dieRanges.get(partKey(textOf(row, 'die') ?? ''));
  if (range && (diameter < range[0] || diameter > range[1])) {
    addProblem(schema, row, 'crimpDiameter', shown(diameter), `within the range of its die, ${range[0]} … ${range[1]}`);
  }
}

function finishMachine(row: ReadRow): void {
  const schema = catalogueTables.machines;
  const given = (key: string) => row.values[key] !== undefined || !!row.unread?.[key];
  if (!given('hose') && !given('fitting')) {
    const [lowest, highest] = [numberOf(row, 'lowest'), numberOf(row, 'highest')];
    if (lowest !== undefined && highest !== undefined && lowest > highest) {
      addProblem(schema, row, 'lowest', shown(lowest), `no more than the highest, ${highest}`);
    }
    if (numberOf(row, 'step') === 0) addProblem(schema, row, 'step', '0', 'the change of diameter per digit, not 0');
    return;
  }
  refuseBareStar(schema, row);
  for (const key of ['die', 'hose', 'fitting', 'dial']) {
    if (!given(key)) addProblem(schema, row, key, 'blank', 'to be filled in, as the row records a setting');
  }
}

function finishDie(row: ReadRow): void {
  const [smallest, largest] = [numberOf(row, 'smallest'), numberOf(row, 'largest')];
  if (smallest === undefined || largest === undefined || smallest <= largest) return;
  addProblem(catalogueTables.dies, row, 'smallest', shown(smallest), `no more than the largest, ${largest}`);
}

function finishHose(row: ReadRow): void {
  const [coldest, hottest] = [numberOf(row, 'coldest'), numberOf(row, 'hottest')];
  if (coldest === undefined || hottest === undefined || coldest <= hottest) return;
  addProblem(catalogueTables.hoses, row, 'coldest', shown(coldest), `no more than the hottest, ${hottest}`);
}

/** Brackets in a rate's name are its unit or currency; that of a length counts. */
function finishRate(row: ReadRow, { units }: RowContext): void {
  const { name, bracket } = splitHeading(textOf(row, 'rate') ?? '');
  const value = numberOf(row, 'value');
  if (headingKey(name) === 'scrapfraction' && value !== undefined && value >= 1) {
    addProblem(catalogueTables.rates, row, 'value', shown(value), 'a fraction below 1 (4 % is 0.04)');
  }
  const unit = headingKey(name) === 'shortestfreehose' && bracket ? measureUnit('length', bracket) : undefined;
  if (unit && value !== undefined) {
    row.values.value = cellNumber(convertMeasure(new Decimal(value), unit, units.length));
    row.values.rate = name;
  }
}

const FINISH: Partial<Record<TableName, (row: ReadRow, context: RowContext) => void>> = {
  hoses: finishHose,
  crimps: finishCrimp,
  machines: finishMachine,
  dies: finishDie,
  rates: finishRate,
};

/** Checks each row as a whole and works out what follows from its cells; problems are added to the rows. */
export function finishRows(name: TableName, rows: readonly ReadRow[], context: RowContext): void {
  const finish = FINISH[name];
  if (finish) for (const row of rows) finish(row, context);
}

/** Ranges of the dies that were read; a die without limits has none. */
export function dieRanges(rows: readonly ReadRow[]): Map<string, readonly [number, number]> {
  return new Map(
    rows
      .filter(row => row.problems.length === 0)
      .map(row => [partKey(textOf(row, 'die')!), [numberOf(row, 'smallest') ?? 0, numberOf(row, 'largest') ?? Number.MAX_VALUE]]),
  );
}
