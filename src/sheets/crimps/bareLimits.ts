import { measureFromText } from '../../core/units/measureText';
import { measureUnit } from '../../core/units/measureUnit';
import { blockOf } from '../../workbook/a1';
import type { FoundTable } from '../table/findTables';
import { headingForms, statedUnit } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import type { SheetCells } from '../table/sheetCells';
import type { CrimpColumns } from './crimpColumns';
import { isReadingRole, type CrimpRole } from './crimpRoles';
import { sampleRows } from './readingColumns';

/** What a pair of `Min` and `Max` is: limits, the row's own smallest and largest reading, or it cannot be told. */
export type PairMeaning = 'limits' | 'readings' | 'either';

/** Columns of a smallest and a largest diameter that belong together. */
export interface ExtremePair {
  readonly end: '' | 'A' | 'B';
  readonly smallest: number | undefined;
  readonly largest: number | undefined;
}

/** Share of the rows that tells. */
const NEARLY_ALL = 0.8;
const HARDLY_ANY = 0.3;

/** The pairs of a table, for both ends and for each. */
export function extremePairs({ columns }: Pick<CrimpColumns, 'columns'>): readonly ExtremePair[] {
  return (['', 'A', 'B'] as const)
    .map(end => ({ end, smallest: columns[`smallest${end}`], largest: columns[`largest${end}`] }))
    .filter(({ smallest, largest }) => smallest !== undefined || largest !== undefined);
}

/** `Min` without `limit` or `allowed`: it may as well head the smallest reading. */
export function isBareExtreme(heading: string): boolean {
  const { smallest, largest } = HEADING_WORDS;
  return headingForms(heading.replace(/ [AB]$/, '')).some(form => smallest.loose!.test(form) || largest.loose!.test(form));
}

/** Whether a formula takes cells of these columns, of whatever row, or names them by their headings. */
function takesColumns(formula: string, columns: readonly number[], headings: readonly string[]): boolean {
  const addresses = formula.match(/\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?(?![\w(])/gi) ?? [];
  const isIn = (address: string) => {
    const block = blockOf(address);
    return block !== undefined && columns.some(column => column >= block.column && column < block.column + block.columns);
  };
  return addresses.some(isIn) || headings.some(heading => heading !== '' && formula.includes(`[${heading}]`));
}

interface Numbers {
  readonly at: (row: number, column: number) => number | undefined;
  /** Half of the last decimal that a column shows. */
  readonly rounding: (column: number) => number;
}

/** Numbers of a table in one unit, as far as its headings say theirs. */
function numbersOf(cells: SheetCells, { headings, block }: FoundTable, rows: readonly number[]): Numbers {
  const mm = measureUnit('length', 'mm')!;
  const factor = (column: number) =>
    (statedUnit(headings[column - block.column]!, 'length').unit ?? mm).factor.div(mm.factor).toNumber();
  const plain = (row: number, column: number) => {
    const cell = cells.value(row, column);
    const value = typeof cell === 'string' ? measureFromText('length', cell, 'decimal')?.value.toNumber() : cell;
    return typeof value === 'number' && value > 0 ? Number(value.toPrecision(12)) : undefined;
  };
  const decimals = (value = 0) => String(value).split('.')[1]?.length ?? 0;
  return {
    at: (row, column) => {
      const value = plain(row, column);
      return value === undefined ? undefined : value * factor(column);
    },
    rounding: column => 0.5000001 * 10 ** -Math.max(...rows.map(row => decimals(plain(row, column)))) * factor(column),
  };
}

/** What one crimp has: its pair, and the smallest and largest reading. */
interface Extremes {
  readonly pair: readonly (number | undefined)[];
  readonly own: readonly [number, number] | undefined;
}

/** The rows of each crimp: with one reading a row they go on until the pair changes. */
function crimpsOf({ at }: Numbers, { smallest, largest }: ExtremePair, rows: readonly number[], isColumn: boolean): number[][] {
  const key = (row: number) => [smallest, largest].map(column => (column === undefined ? '' : (at(row, column) ?? ''))).join(' ');
  const crimps: number[][] = [];
  for (const row of rows) {
    const open = crimps.at(-1);
    if (isColumn && open && (key(row).trim() === '' || key(row) === key(open[0]!))) open.push(row);
    else crimps.push([row]);
  }
  return crimps;
}

function extremesOf(numbers: Numbers, { smallest, largest }: ExtremePair, crimp: readonly number[], readings: readonly number[]) {
  const all = crimp.flatMap(row => readings.flatMap(column => numbers.at(row, column) ?? []));
  const pair = [smallest, largest].map(column => (column === undefined ? undefined : numbers.at(crimp[0]!, column)));
  return { pair, own: all.length > 0 ? ([Math.min(...all), Math.max(...all)] as const) : undefined };
}

/** Whether the readings say that a pair limits them: one lies outside, it is there before they are, or it holds for several crimps. */
function limitsThem(crimps: readonly Extremes[], slack: readonly number[]): boolean {
  const filled = crimps.filter(({ pair }) => pair.some(value => value !== undefined));
  const isOutside = ({ pair: [low, high], own }: Extremes) =>
    own !== undefined && ((low !== undefined && own[0] < low - slack[0]!) || (high !== undefined && own[1] > high + slack[1]!));
  const measured = filled.filter(({ own }) => own !== undefined);
  const ownOf = new Map<string, Set<string>>();
  for (const { pair, own } of measured) {
    const key = pair.join(' ');
    ownOf.set(key, (ownOf.get(key) ?? new Set()).add(own!.join(' ')));
  }
  return filled.some(each => each.own === undefined || isOutside(each)) || [...ownOf.values()].some(({ size }) => size > 1);
}

/** What a pair of columns is, by its formulas and by the numbers beside it. */
export function pairMeaning(cells: SheetCells, table: FoundTable, found: CrimpColumns, pair: ExtremePair): PairMeaning {
  const { columns, layout } = found;
  const roles = (Object.keys(columns) as CrimpRole[]).filter(isReadingRole);
  const of = (isB: boolean) => roles.filter(role => role.startsWith('readingB') === isB).map(role => columns[role]!);
  const [ofA, ofB] = [of(false), of(true)];
  const all = [...ofA, ...ofB];
  const rows = sampleRows(table);
  const own = [pair.smallest, pair.largest].filter(column => column !== undefined);
  const headings = all.map(column => table.headings[column - table.block.column]!);
  if (rows.some(row => own.some(column => takesColumns(cells.formula(row, column), all, headings)))) return 'readings';
  const numbers = numbersOf(cells, table, rows);
  const slack = [pair.smallest, pair.largest].map(column => (column === undefined ? 0 : numbers.rounding(column)));
  const crimps = crimpsOf(numbers, pair, rows, layout === 'column');
  const beside = pair.end === 'A' ? [ofA] : pair.end === 'B' ? [ofB] : ofB.length > 0 ? [all, ofA, ofB] : [all];
  const shares = beside.map(readings => {
    const both = crimps
      .map(crimp => extremesOf(numbers, pair, crimp, readings))
      .filter(each => each.own && each.pair.some(value => value !== undefined));
    const isSame = (value: number | undefined, at: 0 | 1, each: Extremes) =>
      value === undefined || Math.abs(value - each.own![at]) <= slack[at]!;
    const same = both.filter(each => isSame(each.pair[0], 0, each) && isSame(each.pair[1], 1, each));
    return both.length === 0 ? 0 : same.length / both.length;
  });
  const share = Math.max(...shares);
  if (share >= NEARLY_ALL) return 'readings';
  const isLimits = limitsThem(
    crimps.map(crimp => extremesOf(numbers, pair, crimp, beside[0]!)),
    slack,
  );
  return share < HARDLY_ANY && isLimits ? 'limits' : 'either';
}
