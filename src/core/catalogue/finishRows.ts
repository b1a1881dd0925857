import { quotedText, shownText } from '../quotedText';
import { Decimal } from '../units/decimal';
import { convertMeasure, measureUnit } from '../units/measureUnit';
import type { CatalogueUnits } from './catalogueUnits';
import { cellNumber } from './cellNumber';
import { fillDiameter, isPlausible } from './crimpLimits';
import { splitHeading } from '../units/headingUnit';
import { headingKey, partKey } from './partName';
import type { ReadRow } from './readRows';
import { addProblem, numberIn, quotedValue, textIn } from './rowFacts';
import type { TableSchema } from './tableSchema';
import { catalogueTables, type TableName } from './tables/catalogueTables';

/** What checking a row needs to know besides the row. */
export interface RowContext {
  readonly units: CatalogueUnits;
  /** Crimp range of each die by its key; the second number is the largest. */
  readonly dieRanges: ReadonlyMap<string, readonly [number, number]>;
}

/** A pattern is the beginning of a name and one * at its end: none is bare, and none has a * elsewhere. */
function refuseOddPattern(schema: TableSchema, row: ReadRow, key = 'fitting'): void {
  const name = textIn(row, key) ?? '';
  if (/^\*|\*./.test(name)) addProblem(schema, row, key, quotedText(name), 'a part, or the beginning of its name and *');
}

function finishCrimp(row: ReadRow, { dieRanges }: RowContext): void {
  const schema = catalogueTables.crimps;
  refuseOddPattern(schema, row);
  fillDiameter(row);
  const diameter = numberIn(row, 'crimpDiameter');
  const tolerance = numberIn(row, 'tolerance');
  if (diameter === undefined || tolerance === undefined) return;
  if (!isPlausible(diameter, tolerance)) {
    addProblem(schema, row, 'tolerance', quotedValue(tolerance), `between 1/2000 and 1/10 of the crimp diameter ${diameter}`);
  }
  const range = dieRanges.get(partKey(textIn(row, 'die') ?? ''));
  if (range && (diameter < range[0] || diameter > range[1])) {
    addProblem(schema, row, 'crimpDiameter', quotedValue(diameter), `within the range of its die, ${range[0]} … ${range[1]}`);
  }
}

function finishMachine(row: ReadRow): void {
  const schema = catalogueTables.machines;
  const given = (key: string) => row.values[key] !== undefined || !!row.unread?.[key];
  if (!given('hose') && !given('fitting')) {
    const [lowest, highest] = [numberIn(row, 'lowest'), numberIn(row, 'highest')];
    if (lowest !== undefined && highest !== undefined && lowest > highest) {
      addProblem(schema, row, 'lowest', quotedValue(lowest), `no more than the highest, ${highest}`);
    }
    if (numberIn(row, 'step') === 0) addProblem(schema, row, 'step', '0', 'the change of diameter per digit, not 0');
    return;
  }
  refuseOddPattern(schema, row);
  for (const key of ['die', 'hose', 'fitting', 'dial']) {
    if (!given(key)) addProblem(schema, row, key, 'blank', 'to be filled in, as the row records a setting');
  }
}

function finishDie(row: ReadRow): void {
  const [smallest, largest] = [numberIn(row, 'smallest'), numberIn(row, 'largest')];
  if (smallest === undefined || largest === undefined || smallest <= largest) return;
  addProblem(catalogueTables.dies, row, 'smallest', quotedValue(smallest), `no more than the largest, ${largest}`);
}

function finishTemperatures(schema: TableSchema, row: ReadRow): void {
  const [coldest, hottest] = [numberIn(row, 'coldest'), numberIn(row, 'hottest')];
  if (coldest === undefined || hottest === undefined || coldest <= hottest) return;
  addProblem(schema, row, 'coldest', quotedValue(coldest), `no more than the hottest, ${hottest}`);
}

function finishFluid(row: ReadRow): void {
  refuseOddPattern(catalogueTables.fluids, row, 'hose');
  finishTemperatures(catalogueTables.fluids, row);
}

/** Brackets in a rate's name are its unit or currency; that of a length counts. */
function finishRate(row: ReadRow, { units }: RowContext): void {
  const { name, bracket } = splitHeading(textIn(row, 'rate') ?? '');
  const value = numberIn(row, 'value');
  if (headingKey(name) === 'scrapfraction' && value !== undefined && value >= 1) {
    addProblem(catalogueTables.rates, row, 'value', quotedValue(value), 'a fraction below 1 (4 % is 0.04)');
  }
  if (headingKey(name) !== 'shortestfreehose' || !bracket) return;
  const unit = measureUnit('length', bracket);
  if (!unit) {
    const expected = `${quotedText(name)} with a unit of length, or "${shownText(name)} in diameters" without brackets`;
    addProblem(catalogueTables.rates, row, 'rate', quotedText(textIn(row, 'rate') ?? ''), expected);
  } else if (value !== undefined) {
    row.values.value = cellNumber(convertMeasure(new Decimal(value), unit, units.length));
    row.values.rate = name;
  }
}

const FINISH: Partial<Record<TableName, (row: ReadRow, context: RowContext) => void>> = {
  hoses: row => finishTemperatures(catalogueTables.hoses, row),
  crimps: finishCrimp,
  machines: finishMachine,
  dies: finishDie,
  rates: finishRate,
  fluids: finishFluid,
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
      .map(row => [partKey(textIn(row, 'die')!), [numberIn(row, 'smallest') ?? 0, numberIn(row, 'largest') ?? Number.MAX_VALUE]]),
  );
}
