import { headingUnit } from '../../core/units/headingUnit';
import { isDateFormat, momentNumber } from '../../core/units/sheetDate';
import { nameOfCell } from '../../cells/sheetCell';
import { endsOfHeading } from '../table/endOfHeading';
import type { FoundTable } from '../table/findTables';
import { headingForms, statedUnit } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import { nameColumns, type KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import { columnsByRole } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { CRIMP_ROLES, CRIMP_END_FIELDS, CRIMP_END_ROLES, type CrimpField, type CrimpRole } from './crimpRoles';
import { couldBeReadings, isReadingHeading, sampleRows, type NamedReading } from './readingColumns';

export type FoundColumns = Partial<Record<CrimpRole, number>>;

/** What the headings say, column by column. */
interface EndColumns {
  readonly found: FoundColumns;
  readonly readings: readonly NamedReading[];
}

const OF_AN_END = CRIMP_ROLES.filter(([role]) => role === 'end' || CRIMP_END_FIELDS.some(field => field === role));

/** `Reading C`: then the letters number the readings, and `Reading A` is none of end A. */
const isLettered = (headings: readonly string[]) =>
  headings.some(heading => headingForms(heading).some(form => / [cd]$/.test(form) && isReadingHeading(form)));

/** Columns whose headings name an end: `Die A`, `A 1`; `End A` heads the names of couplings. */
export function ofEnds(cells: SheetCells, table: FoundTable, corrections: HeadingCorrections): EndColumns {
  const { headings, block } = table;
  const found: FoundColumns = {};
  const readings: NamedReading[] = [];
  const hasLetters = isLettered(headings);
  headings.forEach((heading, index) => {
    if (heading === '' || corrections.has(correctionKey(heading))) return;
    if (hasLetters && isReadingHeading(heading)) return;
    const column = block.column + index;
    for (const text of new Set([headingUnit(heading, 'length').name, heading])) {
      for (const { end, rest } of endsOfHeading(text)) {
        const [role] = Object.keys(columnsByRole({ headings: [rest], block }, OF_AN_END)) as (keyof typeof found)[];
        const isReading = isReadingHeading(rest) && couldBeReadings(cells, table, column);
        if (role && !isReading)
          found[`${role === 'end' ? 'fitting' : (role as (typeof CRIMP_END_FIELDS)[number])}${end}`] ??= column;
        else if (isReadingHeading(rest)) readings.push({ column, end });
        else continue;
        return;
      }
    }
  });
  return { found, readings };
}

export const saidReadings = ({ headings, block }: FoundTable, corrections: HeadingCorrections): NamedReading[] =>
  headings.flatMap((heading, index): NamedReading[] => {
    const said = corrections.get(correctionKey(heading));
    if (said !== 'reading' && said !== 'readingB') return [];
    return [{ column: block.column + index, end: said === 'readingB' ? 'B' : 'A' }];
  });

/** Columns of the plain roles; those of ends are theirs already. */
export function ofWords(table: FoundTable, taken: ReadonlySet<number>, corrections: HeadingCorrections): FoundColumns {
  const headings = table.headings.map((heading, index) => (taken.has(table.block.column + index) ? '' : heading));
  return columnsByRole({ headings, block: table.block }, [...CRIMP_ROLES, ...CRIMP_END_ROLES], corrections);
}

export const headingOf = ({ headings, block }: FoundTable, column: number) => headings[column - block.column] ?? '';
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
export function settle(
  cells: SheetCells,
  table: FoundTable,
  found: FoundColumns,
  parts: KnownParts,
  corrections: HeadingCorrections,
): FoundColumns {
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
export function withNamedParts(
  cells: SheetCells,
  table: FoundTable,
  found: FoundColumns,
  parts: KnownParts,
  corrections: HeadingCorrections,
): FoundColumns {
  const { hose } = found;
  const [a, b] = [found.fittingA ?? found.fitting, found.fittingB];
  if (hose !== undefined && a !== undefined) return {};
  const words = {
    ...(hose !== undefined && { hose }),
    ...(a !== undefined && { fittingA: a }),
    ...(b !== undefined && { fittingB: b }),
  };
  const named = nameColumns(cells, table, words, parts, corrections);
  const own: FoundColumns = {};
  if (hose === undefined && named.hose !== undefined) own.hose = named.hose;
  if (a === undefined && named.fittingA !== undefined) {
    if (named.fittingB === undefined) own.fitting = named.fittingA;
    else [own.fittingA, own.fittingB] = [named.fittingA, named.fittingB];
  }
  return own;
}
