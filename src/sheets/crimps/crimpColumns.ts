import { headingUnit } from '../../core/units/headingUnit';
import { isDateFormat, momentNumber } from '../../core/units/sheetDate';
import { nameOfCell } from '../../cells/sheetCell';
import { endsOfHeading } from '../table/endOfHeading';
import type { FoundTable } from '../table/findTables';
import { headingForms, statedUnit } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import { nameColumns, type KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import { columnsByRole, type ColumnsByRole } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { CRIMP_ROLES, CRIMP_END_FIELDS, CRIMP_END_ROLES, type CrimpField, type CrimpRole } from './crimpRoles';
import { couldBeReadings, isReadingHeading, readingColumns, sampleRows, type NamedReading } from './readingColumns';

/** How the readings lie: a crimp a row, both ends of an assembly in a row, or one reading a row. */
export type CrimpLayout = 'row' | 'ends' | 'column';

/** Which column of a table of crimps is what, and how its readings lie. */
export interface CrimpColumns {
  readonly layout: CrimpLayout;
  readonly columns: ColumnsByRole<CrimpRole>;
  /** How many columns of readings a crimp has, of end A and of end B. */
  readonly readings: readonly [number, number];
}

type Found = Partial<Record<CrimpRole, number>>;

/** What the headings say, column by column. */
interface Named {
  readonly found: Found;
  readonly readings: readonly NamedReading[];
}

const OF_AN_END = CRIMP_ROLES.filter(([role]) => role === 'end' || CRIMP_END_FIELDS.some(field => field === role));

/** `Reading C`: then the letters number the readings, and `Reading A` is none of end A. */
const isLettered = (headings: readonly string[]) =>
  headings.some(heading => headingForms(heading).some(form => / [cd]$/.test(form) && isReadingHeading(form)));

/** Columns whose headings name an end: `Die A`, `A 1`; `End A` heads the names of couplings. */
function ofEnds({ headings, block }: FoundTable, corrections: HeadingCorrections): Named {
  const found: Found = {};
  const readings: NamedReading[] = [];
  const hasLetters = isLettered(headings);
  headings.forEach((heading, index) => {
    if (heading === '' || corrections.has(correctionKey(heading))) return;
    if (hasLetters && isReadingHeading(heading)) return;
    const column = block.column + index;
    for (const text of new Set([headingUnit(heading, 'length').name, heading])) {
      for (const { end, rest } of endsOfHeading(text)) {
        const [role] = Object.keys(columnsByRole({ headings: [rest], block }, OF_AN_END)) as (keyof typeof found)[];
        if (role) found[`${role === 'end' ? 'fitting' : (role as (typeof CRIMP_END_FIELDS)[number])}${end}`] ??= column;
        else if (isReadingHeading(rest)) readings.push({ column, end });
        else continue;
        return;
      }
    }
  });
  return { found, readings };
}

const saidReadings = ({ headings, block }: FoundTable, corrections: HeadingCorrections): NamedReading[] =>
  headings.flatMap((heading, index): NamedReading[] => {
    const said = corrections.get(correctionKey(heading));
    if (said !== 'reading' && said !== 'readingB') return [];
    return [{ column: block.column + index, end: said === 'readingB' ? 'B' : 'A' }];
  });

/** Columns of the plain roles; those of ends are theirs already. */
function ofWords(table: FoundTable, taken: ReadonlySet<number>, corrections: HeadingCorrections): Found {
  const headings = table.headings.map((heading, index) => (taken.has(table.block.column + index) ? '' : heading));
  return columnsByRole({ headings, block: table.block }, [...CRIMP_ROLES, ...CRIMP_END_ROLES], corrections);
}

const headingOf = ({ headings, block }: FoundTable, column: number) => headings[column - block.column] ?? '';
const isLoose = (table: FoundTable, column: number, word: CrimpField) => {
  const { exact } = HEADING_WORDS[word];
  return !headingForms(headingOf(table, column)).some(form => exact.test(form));
};

/** Whether most filled cells of a column are dates. */
function holdsDates(cells: SheetCells, table: FoundTable, column: number): boolean {
  const filled = sampleRows(table).filter(row => cells.shown(row, column) !== '');
  const dates = filled.filter(row => {
    const cell = cells.shown(row, column);
    return typeof cell === 'number'
      ? isDateFormat(cells.format(row, column)) || cell > 20_000
      : typeof cell === 'string' && momentNumber(cell) !== undefined;
  });
  return dates.length * 2 > filled.length;
}

/** `Machine` is the crimper where its values are names in Machines, or where the table is no hose list. */
function isCrimper(cells: SheetCells, table: FoundTable, column: number, { isMachine }: KnownParts): boolean {
  const names = sampleRows(table)
    .map(row => nameOfCell(cells.shown(row, column)))
    .filter(Boolean);
  if (isMachine && names.length > 0 && names.filter(isMachine).length * 2 >= names.length) return true;
  const lengths = columnsByRole(table, [
    ['overall', 'overall'],
    ['cutLength', 'cutLength'],
  ]);
  return Object.keys(lengths).length === 0;
}

/** What words alone cannot tell. */
function settle(cells: SheetCells, table: FoundTable, found: Found, parts: KnownParts, corrections: HeadingCorrections): Found {
  const isSaid = (column: number) => corrections.has(correctionKey(headingOf(table, column)));
  const settled = { ...found };
  // `Type` names the pair only where nothing else names hose or coupling.
  const isPair = [settled.hose, settled.fitting, settled.fittingA].every(column => column === undefined);
  if (
    settled.combination !== undefined &&
    !isPair &&
    isLoose(table, settled.combination, 'combination') &&
    !isSaid(settled.combination)
  )
    delete settled.combination;
  if (settled.crimper !== undefined && !isSaid(settled.crimper) && holdsDates(cells, table, settled.crimper)) {
    settled.date ??= settled.crimper;
    delete settled.crimper;
  }
  const { machine } = settled;
  if (machine !== undefined && (settled.crimper !== undefined || (!isSaid(machine) && !isCrimper(cells, table, machine, parts))))
    delete settled.machine;
  if (settled.crimper !== undefined) settled.machine = settled.crimper;
  delete settled.crimper;
  if (settled.date === undefined && settled.time !== undefined) [settled.date, settled.time] = [settled.time, undefined];
  for (const [dial, diameter] of [
    ['lowest', 'smallest'],
    ['highest', 'largest'],
  ] as const) {
    const column = settled[dial];
    const isLength = column !== undefined && statedUnit(headingOf(table, column), 'length').unit !== undefined;
    const hasDial = [settled.dial, settled.dialA, settled.step, settled.largestMove].some(each => each !== undefined);
    if (column === undefined || isSaid(column) || (hasDial && !isLength)) continue;
    settled[diameter] ??= column;
    delete settled[dial];
  }
  if (settled.assembly === undefined && settled.crimp !== undefined && /^assembly/i.test(headingOf(table, settled.crimp)))
    [settled.assembly, settled.crimp] = [settled.crimp, undefined];
  return settled;
}

/** Hose and couplings by the names that stand in their columns. */
function byNames(cells: SheetCells, table: FoundTable, found: Found, parts: KnownParts, corrections: HeadingCorrections): Found {
  const { hose } = found;
  const [a, b] = [found.fittingA ?? found.fitting, found.fittingB];
  if (hose !== undefined && a !== undefined) return {};
  const words = {
    ...(hose !== undefined && { hose }),
    ...(a !== undefined && { fittingA: a }),
    ...(b !== undefined && { fittingB: b }),
  };
  const named = nameColumns(cells, table, words, parts, corrections);
  const own: Found = {};
  if (hose === undefined && named.hose !== undefined) own.hose = named.hose;
  if (a === undefined && named.fittingA !== undefined) {
    if (named.fittingB === undefined) own.fitting = named.fittingA;
    else [own.fittingA, own.fittingB] = [named.fittingA, named.fittingB];
  }
  return own;
}

const columnsIn = (found: Found): number[] => Object.values(found).filter(column => column !== undefined);
const withoutBlanks = (found: Found): Found =>
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
function isOfCrimps(table: FoundTable, found: Found, [ofA, ofB]: readonly [readonly number[], readonly number[]]): boolean {
  const [only] = ofA;
  if (only === undefined || ofA.length > 1 || ofB.length > 0) return true;
  return /read|cal+iper|measur|actual/i.test(headingOf(table, only)) || OF_CRIMPS.some(role => found[role] !== undefined);
}

/** The same headings come twice, once for each end: the second column of a heading is end B's. */
function ofSecondBlock(table: FoundTable, columns: Found, firstReading: number): void {
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
  const ends = ofEnds(table, corrections);
  const said = saidReadings(table, corrections);
  const endColumns = [...columnsIn(ends.found), ...ends.readings.map(({ column }) => column)];
  const words = ofWords(table, new Set(endColumns), corrections);
  const known = { ...words, ...ends.found };
  const found = withoutBlanks(
    settle(cells, table, { ...known, ...byNames(cells, table, known, parts, corrections) }, parts, corrections),
  );
  const { readingNumber, ...others } = found;
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
  const columns: Found = { ...others };
  // A number of the reading means something only where each has a row of its own; elsewhere `Pos.` may number the lines.
  if (readingNumber !== undefined && layout === 'column') columns.readingNumber = readingNumber;
  else if (readingNumber !== undefined && !ofA.includes(readingNumber) && /^pos/i.test(headingOf(table, readingNumber)))
    columns.line ??= readingNumber;
  if (ofB.length > 0 && named.every(({ end }) => end === '')) ofSecondBlock(table, columns, ofB[0]!);
  ofA.forEach((column, index) => (columns[`reading${index + 1}`] = column));
  ofB.forEach((column, index) => (columns[`readingB${index + 1}`] = column));
  return { layout, columns, readings: [ofA.length, ofB.length] };
}
