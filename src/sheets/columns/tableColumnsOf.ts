import { nameOfCell } from '../../cells/sheetCell';
import { headingUnit } from '../../core/units/headingUnit';
import { measureFromText } from '../../core/units/measureText';
import { endsOfHeading } from '../table/endOfHeading';
import type { FoundTable } from '../table/findTables';
import { crimperColumn, nameColumns, type KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { TableKind } from '../table/tableAnswers';
import { columnsByRole, type ColumnsByRole } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { COLUMN_ROLES, OF_END_A, READING, type Role } from './columnRoles';
import { readingSpan } from './readingSpan';
import type { Run } from '../table/cellRuns';

/** Which column is what; all roles but the readings have one column. */
export type Columns = Readonly<Partial<Record<Role, Run>>>;

type OneColumn = Exclude<Role, 'readings'>;

const NO_CORRECTIONS: HeadingCorrections = new Map();
const SAMPLE_ROWS = 50;

/** Roles of numbers: a column of words is none of them, whatever its heading says. */
const NUMBERS = ['overall', 'quantity', 'tolerance', 'target'] as const satisfies readonly OneColumn[];

function holdsNumbers(cells: SheetCells, { block }: FoundTable, column: number): boolean {
  const rows = Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => block.row + 1 + i);
  const filled = rows.map(row => cells.value(row, column)).filter(cell => nameOfCell(cell) !== '');
  const isNumber = (cell: unknown) => typeof cell === 'number' || measureFromText('length', String(cell), 'decimal');
  return filled.length === 0 || filled.some(isNumber);
}

/** Columns of end A, where the headings name ends: `Tolerance A`. */
function ofEndA(table: FoundTable, found: ColumnsByRole<OneColumn>): ColumnsByRole<OneColumn> {
  const taken = new Set(Object.values(found));
  const more: Partial<Record<OneColumn, number>> = {};
  table.headings.forEach((heading, index) => {
    const column = table.block.column + index;
    if (taken.has(column)) return;
    const own = endsOfHeading(headingUnit(heading, 'length').name).find(({ end }) => end === 'A');
    if (!own) return;
    const roles = Object.keys(columnsByRole({ headings: [own.rest], block: table.block }, COLUMN_ROLES)) as OneColumn[];
    const role = OF_END_A.find(each => roles.includes(each));
    if (role && found[role] === undefined) more[role] ??= column;
  });
  return more;
}

/**
 * Job lines, or readings of crimps: corrections are remembered for either.
 * @param crimps what was said by hand about tables of crimps on its sheet
 */
export function kindOfTable(cells: SheetCells, table: FoundTable, crimps: HeadingCorrections = NO_CORRECTIONS): TableKind {
  if (table.headings.some(heading => crimps.get(correctionKey(heading)) === READING)) return 'crimps';
  const found = columnsByRole(table, COLUMN_ROLES);
  if (found.hose !== undefined && found.overall !== undefined) return 'jobs';
  return readingSpan(cells, table, new Set(Object.values(found)), NO_CORRECTIONS) ? 'crimps' : 'jobs';
}

/** Which columns of a table our functions can take: as somebody said, by their words, by the names that stand in them. */
export function tableColumnsOf(
  cells: SheetCells,
  table: FoundTable,
  parts: KnownParts = {},
  corrections: HeadingCorrections = NO_CORRECTIONS,
): Columns {
  const words = columnsByRole(table, COLUMN_ROLES, corrections);
  const byWords = { ...words, ...ofEndA(table, words) };
  const crimper = byWords.crimper ?? crimperColumn(cells, table, parts.isMachine);
  const found: Partial<Record<OneColumn, number>> = {
    ...byWords,
    ...nameColumns(cells, table, byWords, parts, corrections),
    ...(crimper !== undefined && { crimper }),
  };
  for (const role of NUMBERS) {
    const column = found[role];
    if (column !== undefined && !holdsNumbers(cells, table, column)) delete found[role];
  }
  const readings = readingSpan(cells, table, new Set(Object.values(found)), corrections);
  const spans = Object.entries(found).map(([role, column]) => [role, { first: column, last: column }] as const);
  return Object.fromEntries([...spans, ...(readings ? [['readings', readings] as const] : [])]);
}
