import type { FoundTable } from '../table/findTables';
import type { KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { ColumnsByRole } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { CRIMP_END_FIELDS, type CrimpRole } from './crimpRoles';
import { couldBeReadings, isReadingHeading, readingColumns, type NamedReading } from './readingColumns';
import { type FoundColumns, ofEnds, saidReadings, ofWords, headingOf, settle, withNamedParts } from './namedCrimpColumns';

/** How the readings lie: a crimp a row, both ends of an assembly in a row, or one reading a row. */
export type CrimpLayout = 'row' | 'ends' | 'column';

/** Which column of a table of crimps is what, and how its readings lie. */
export interface CrimpColumns {
  readonly layout: CrimpLayout;
  readonly columns: ColumnsByRole<CrimpRole>;
  /** How many columns of readings a crimp has, of end A and of end B. */
  readonly readings: readonly [number, number];
  /** Its numbers of crimps are those of lines or jobs, of which several crimps may be made. */
  readonly isLine: boolean;
}

const columnsIn = (found: FoundColumns): number[] => Object.values(found).filter(column => column !== undefined);
const withoutBlanks = (found: FoundColumns): FoundColumns =>
  Object.fromEntries(Object.entries(found).filter(([, column]) => column !== undefined));

const OF_CRIMPS: readonly CrimpRole[] = [
  'combination',
  'hose',
  'fitting',
  'fittingA',
  'target',
  'tolerance',
  'smallest',
  'crimp',
  'die',
];

/** One column headed `Value` or `Result` is one of readings only in a table that speaks of crimps, or where it says so itself. */
function isOfCrimps(
  table: FoundTable,
  found: FoundColumns,
  [ofA, ofB]: readonly [readonly number[], readonly number[]],
): boolean {
  const [only] = ofA;
  if (only === undefined || ofA.length > 1 || ofB.length > 0) return true;
  return /read|cal+iper|measur|actual/i.test(headingOf(table, only)) || OF_CRIMPS.some(role => found[role] !== undefined);
}

/** The same headings come twice, once for each end: the second column of a heading is end B's. */
function ofSecondBlock(table: FoundTable, columns: FoundColumns, firstReading: number): void {
  const words = table.headings.map(correctionKey);
  for (const field of CRIMP_END_FIELDS) {
    const first = columns[field];
    if (first === undefined) continue;
    const index = words.indexOf(words[first - table.block.column]!, first - table.block.column + 1);
    if (index < 0 || first > firstReading) continue;
    columns[`${field}A`] ??= first;
    columns[`${field}B`] ??= table.block.column + index;
    delete columns[field];
  }
}

/** How the readings lie and which column is what: by hand, by the headings, then by what stands below them. */
export function crimpColumns(
  cells: SheetCells,
  table: FoundTable,
  corrections: HeadingCorrections,
  parts: KnownParts = {},
): CrimpColumns {
  const ends = ofEnds(cells, table, corrections);
  const said = saidReadings(table, corrections);
  const endColumns = [...columnsIn(ends.found), ...ends.readings.map(({ column }) => column)];
  const words = ofWords(table, new Set(endColumns), corrections);
  const known = { ...words, ...ends.found };
  const found = withoutBlanks(
    settle(cells, table, { ...known, ...withNamedParts(cells, table, known, parts, corrections) }, parts, corrections),
  );
  const { readingNumber, caliper, gauge, ...others } = found;
  const taken = new Set(columnsIn(others));
  table.headings.forEach((heading, index) => {
    if (corrections.has(correctionKey(heading))) taken.add(table.block.column + index);
  });
  const plain = table.headings.flatMap((heading, index): NamedReading[] => {
    const column = table.block.column + index;
    const isFree = !taken.has(column) && column !== readingNumber && !endColumns.includes(column);
    return isFree && isReadingHeading(heading) && couldBeReadings(cells, table, column) ? [{ column, end: '' }] : [];
  });
  const isPossible = ({ column }: NamedReading) => couldBeReadings(cells, table, column);
  const named = [...said, ...ends.readings.filter(isPossible), ...plain].sort((a, b) => a.column - b.column);
  const placed = readingColumns(cells, table, named, taken);
  const [ofA, ofB] = said.length > 0 || isOfCrimps(table, found, placed) ? placed : [[], []];
  const layout: CrimpLayout = ofB.length > 0 ? 'ends' : ofA.length === 1 ? 'column' : 'row';
  const columns: FoundColumns = { ...others };
  // A number of the reading means something only where each has a row of its own; elsewhere `Pos.` may number the lines.
  if (readingNumber !== undefined && layout === 'column') columns.readingNumber = readingNumber;
  else if (readingNumber !== undefined && !ofA.includes(readingNumber) && /^pos/i.test(headingOf(table, readingNumber)))
    columns.line ??= readingNumber;
  // A `Caliper` or `Gauge` that holds no readings names what they were measured with.
  const isReading = (column: number) => ofA.includes(column) || ofB.includes(column);
  if (caliper !== undefined && !isReading(caliper)) columns.caliper = caliper;
  if (gauge !== undefined && !isReading(gauge)) columns.gauge = gauge;
  if (ofB.length > 0 && named.every(({ end }) => end === '')) ofSecondBlock(table, columns, ofB[0]!);
  ofA.forEach((column, index) => (columns[`reading${index + 1}`] = column));
  ofB.forEach((column, index) => (columns[`readingB${index + 1}`] = column));
  const isLine = columns.crimp !== undefined && /^(?:line|job)/i.test(headingOf(table, columns.crimp));
  return { layout, columns, readings: [ofA.length, ofB.length], isLine };
}
