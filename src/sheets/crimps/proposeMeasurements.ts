import type { RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { plainHeading } from '../table/roles';
import {
  namedColumn,
  ROLES_OF_B,
  type MeasurementColumns,
  type MeasurementLayout,
  type MeasurementRole,
  type NamedColumn,
} from './measurementRoles';

/** What was proposed: how the readings lie, and which column is what. */
export interface ProposedMeasurements {
  readonly layout: MeasurementLayout;
  readonly columns: MeasurementColumns;
}

type Found = Partial<Record<MeasurementRole, number[]>>;

const SAMPLE_ROWS = 60;
/** Readings of one crimp lie nearer together than this share of the diameter. */
const NEAR = 0.04;

function sampleRows({ block }: FoundTable): number[] {
  return Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => block.row + 1 + i);
}

/** Positive numbers that are not all the same whole number: what a caliper could have given. */
function couldBeReadings(used: RangeContent, table: FoundTable, column: number): boolean {
  const filled = sampleRows(table)
    .map(row => cellOf(used, row, column))
    .filter(cell => cell !== '');
  const numbers = filled.filter(cell => typeof cell === 'number' || (typeof cell === 'string' && /^\s*\d/.test(cell)));
  return filled.length === 0 || numbers.length * 2 > filled.length;
}

/** Words that mean hose and coupling together where no other column names either. */
const KIND = /^(type|kind|article|item|product|part|part (no\.?|number)|description|configuration)$/;
/** Share of the rows that may hold a slip of the hand. */
const SLIPS = 0.3;

/** Whether two columns hold numbers that lie near each other in nearly every row. */
function areNear(used: RangeContent, table: FoundTable, column: number, next: number): boolean {
  const pairs = sampleRows(table)
    .map(row => [cellOf(used, row, column), cellOf(used, row, next)] as const)
    .filter((pair): pair is [number, number] => typeof pair[0] === 'number' && typeof pair[1] === 'number');
  const isFraction = pairs.some(pair => pair.some(value => !Number.isInteger(value)));
  const far = pairs.filter(([a, b]) => !(a > 0 && b > 0 && Math.abs(a - b) <= NEAR * a)).length;
  return isFraction && far <= SLIPS * pairs.length;
}

/** Columns side by side, without a heading of another role, whose numbers lie near each other. */
function readingsByContent(used: RangeContent, table: FoundTable, taken: ReadonlySet<number>): number[] {
  const { column, columns } = table.block;
  const free = (at: number) => at < column + columns && !taken.has(at);
  for (let first = column; first < column + columns; first++) {
    if (!free(first)) continue;
    let last = first;
    while (free(last + 1) && areNear(used, table, last, last + 1)) last += 1;
    if (last > first) return Array.from({ length: last - first + 1 }, (_, i) => first + i);
  }
  return [];
}

/**
 * The readings: those that headings name, else those that look like readings. A single heading of one letter, the `d` of
 * `a b c d`, says less than the columns beside it.
 */
function placedReadings(used: RangeContent, table: FoundTable, named: readonly number[], taken: ReadonlySet<number>) {
  const only = named.length === 1 ? named[0]! : undefined;
  const isLetter = only !== undefined && /^\p{L}$/u.test(plainHeading(table.headings[only - table.block.column]!));
  if (named.length > 0 && !isLetter) return named;
  const alike = readingsByContent(used, table, taken);
  return only === undefined || alike.includes(only) ? alike : named;
}

interface Named extends NamedColumn {
  readonly column: number;
}

const isReading = ({ role }: NamedColumn) => role === 'readings';

/** The readings by their headings: by end where the headings name one, halved where the same headings come twice. */
function readingBlocks(named: readonly Named[], headings: readonly string[], first: number): number[][] {
  const readings = named.filter(isReading);
  const [ofA, ofB] = [readings.filter(({ end }) => end === 'A'), readings.filter(({ end }) => end === 'B')];
  if (ofA.length > 0 && ofB.length > 0) return [ofA, ofB].map(block => block.map(({ column }) => column));
  const columns = readings.map(({ column }) => column);
  const half = columns.length / 2;
  const words = columns.map(column => headings[column - first]!.trim().toLowerCase());
  const isTwice = half >= 2 && Number.isInteger(half) && words.slice(0, half).every((text, i) => text === words[half + i]);
  return isTwice ? [columns.slice(0, half), columns.slice(half)] : columns.length > 0 ? [columns] : [];
}

function placeRoles(named: readonly Named[]): Found {
  const found: Found = {};
  for (const { role, end, column } of named) {
    if (!role || role === 'readings') continue;
    const ofB = ROLES_OF_B[role as keyof typeof ROLES_OF_B] as MeasurementRole | undefined;
    if (end === 'B' && ofB) found[ofB] ??= [column];
    else found[role] ??= [column];
  }
  return found;
}

/** The column of a kind of assembly, where no other names hose, coupling or combination. */
function kindColumn({ headings, block }: FoundTable, found: Found): number | undefined {
  if (found.combination ?? found.hose ?? found.fitting) return undefined;
  const index = headings.findIndex(heading => KIND.test(plainHeading(heading)));
  return index < 0 ? undefined : block.column + index;
}

/** Proposes how the readings lie and which column is what, from the headings and then from what stands below them. */
export function proposeMeasurements(used: RangeContent, table: FoundTable): ProposedMeasurements {
  const first = table.block.column;
  const named = table.headings.map((heading, i): Named => {
    const { role, end } = namedColumn(heading);
    const isRefused = role === 'readings' && !couldBeReadings(used, table, first + i);
    return { column: first + i, role: isRefused ? undefined : role, end };
  });
  const found = placeRoles(named);
  const kind = kindColumn(table, found);
  if (kind !== undefined) found.combination = [kind];
  const [ofA = [], ofB] = readingBlocks(named, table.headings, first);
  const taken = new Set(Object.values(found).flat());
  const readings = placedReadings(used, table, ofA, taken);
  if (readings.length > 0) found.readings = [...readings];
  if (ofB) found.readingsB = [...ofB];
  const layout: MeasurementLayout = ofB ? 'ends' : readings.length === 1 ? 'column' : 'row';
  // An angle or number of a reading means something only where each has a row of its own.
  if (layout !== 'column') delete found.readingNumber;
  return { layout, columns: found };
}
