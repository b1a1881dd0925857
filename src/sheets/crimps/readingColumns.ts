import { headingForms, plainHeading, UNHEADED } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';

const SAMPLE_ROWS = 60;
/** Readings of one crimp lie nearer together than this share of the diameter. */
const NEAR = 0.04;
/** Share of the rows that may hold a slip of the hand. */
const SLIPS = 0.3;

/** The first rows under the headings. */
export function sampleRows({ block }: FoundTable): number[] {
  return Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => block.row + 1 + i);
}

/** True where the words of a heading speak of readings. */
export const isReadingHeading = (heading: string): boolean =>
  headingForms(heading).some(form => HEADING_WORDS.reading.exact.test(form));

const OTHER_WORDS = Object.entries(HEADING_WORDS).flatMap(([word, { exact }]) => (word === 'reading' ? [] : [exact]));

/** True where a heading names something else that people have in their tables: a length, a quantity. */
const isOtherHeading = (heading: string): boolean =>
  headingForms(heading).some(form => form !== '' && OTHER_WORDS.some(exact => exact.test(form)));

/** Whether a column holds numbers, as far as it is filled: what a caliper could have given. */
export function couldBeReadings(cells: SheetCells, table: FoundTable, column: number): boolean {
  const filled = sampleRows(table)
    .map(row => cells.value(row, column))
    .filter(cell => cell !== '');
  const numbers = filled.filter(cell => typeof cell === 'number' || (typeof cell === 'string' && /^\s*\d/.test(cell)));
  return filled.length === 0 || numbers.length * 2 > filled.length;
}

/** Whether two columns hold numbers that lie near each other in nearly every row. */
function areNear(cells: SheetCells, table: FoundTable, column: number, next: number): boolean {
  const pairs = sampleRows(table)
    .map(row => [cells.value(row, column), cells.value(row, next)] as const)
    .filter((pair): pair is [number, number] => typeof pair[0] === 'number' && typeof pair[1] === 'number');
  const isFraction = pairs.some(pair => pair.some(value => !Number.isInteger(value)));
  const far = pairs.filter(([a, b]) => !(a > 0 && b > 0 && Math.abs(a - b) <= NEAR * a)).length;
  return isFraction && far <= SLIPS * pairs.length;
}

/** What is worked out of readings lies near them, but is none. */
const WORKED_OUT = /^(?:mean|average|avg|median|spread|range|deviation|std|standard deviation|min|max|minimum|maximum)\b/;

/** Columns side by side, without a heading of another role, whose numbers lie near each other. */
function byContent(cells: SheetCells, table: FoundTable, taken: ReadonlySet<number>): number[] {
  const { column, columns } = table.block;
  const isElse = (at: number) =>
    isOtherHeading(table.headings[at - column]!) ||
    WORKED_OUT.test(plainHeading(table.headings[at - column]!)) ||
    sampleRows(table).some(row => cells.isComputed(row, at));
  const free = (at: number) => at < column + columns && !taken.has(at) && !isElse(at);
  for (let first = column; first < column + columns; first++) {
    if (!free(first)) continue;
    let last = first;
    while (free(last + 1) && areNear(cells, table, last, last + 1)) last += 1;
    if (last > first) return Array.from({ length: last - first + 1 }, (_, i) => first + i);
  }
  return [];
}

/** A column that its heading calls a reading, and of which end. */
export interface NamedReading {
  readonly column: number;
  readonly end: 'A' | 'B' | '';
}

/** By end where the headings name one, halved where the same headings come twice. */
function blocksOf({ headings, block }: FoundTable, named: readonly NamedReading[]): number[][] {
  const columns = named.map(({ column }) => column);
  const ofB = named.filter(({ end }) => end === 'B').map(({ column }) => column);
  const ofA = columns.filter(column => !ofB.includes(column));
  if (ofA.length > 0 && ofB.length > 0) return [ofA, ofB];
  const half = columns.length / 2;
  const words = columns.map(column => headings[column - block.column]!.trim().toLowerCase());
  const isTwice =
    half >= 2 &&
    Number.isInteger(half) &&
    new Set(words.slice(0, half)).size === half &&
    words.slice(0, half).every((text, i) => text === words[half + i]);
  return isTwice ? [columns.slice(0, half), columns.slice(half)] : columns.length > 0 ? [columns] : [];
}

/** Columns without headings beside a heading of readings, whose numbers lie near its own: it stands over all of them. */
function unheadedBeside(cells: SheetCells, table: FoundTable, first: number): number[] {
  const { column, columns } = table.block;
  const isComputed = (at: number) => sampleRows(table).some(row => cells.isComputed(row, at));
  const beside: number[] = [];
  for (let at = first + 1; at < column + columns; at += 1) {
    if (!UNHEADED.test(table.headings[at - column]!) || !areNear(cells, table, first, at)) break;
    // Readings may be taken over from elsewhere by formulas; among typed ones a formula is an average.
    if (isComputed(at) && !isComputed(first)) break;
    beside.push(at);
  }
  return beside;
}

const GAUGE_WORDS = [HEADING_WORDS.gauge.exact, HEADING_WORDS.caliper.exact];

/** Beside columns that are called readings, a `Gauge` or `Caliper` names what they were measured with. */
function withoutGauges({ headings, block }: FoundTable, named: readonly NamedReading[]): readonly NamedReading[] {
  const isGauge = ({ column }: NamedReading) =>
    headingForms(headings[column - block.column]!).some(form => GAUGE_WORDS.some(words => words.test(form)));
  const others = named.filter(each => !isGauge(each));
  return others.length > 1 ? others : named;
}

/**
 * The columns of readings: those that headings name, else those that look like readings. A single heading of one letter, the `d` of
 * `a b c d`, says less than the columns beside it.
 * @returns those of end A or of every crimp, and those of end B where both ends lie in a row
 */
export function readingColumns(
  cells: SheetCells,
  table: FoundTable,
  named: readonly NamedReading[],
  taken: ReadonlySet<number>,
): readonly [readonly number[], readonly number[]] {
  const readings = withoutGauges(table, named);
  const [ofA = [], ofB = []] = blocksOf(table, readings);
  const only = ofA.length === 1 && ofB.length === 0 ? ofA[0]! : undefined;
  const isLetter = only !== undefined && /^\p{L}$/u.test(plainHeading(table.headings[only - table.block.column]!));
  if (only !== undefined && !isLetter) return [[only, ...unheadedBeside(cells, table, only)], []];
  if (ofA.length > 0 && !isLetter) return [ofA, ofB];
  const alike = byContent(cells, table, taken);
  return only === undefined || alike.includes(only) ? [alike, []] : [ofA, []];
}
