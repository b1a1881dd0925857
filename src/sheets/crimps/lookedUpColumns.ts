import type { FoundTable } from '../table/findTables';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { SheetCells } from '../table/sheetCells';
import { headingNames } from '../table/tableColumns';
import type { CrimpColumns } from './crimpColumns';
import { CRIMP_END_FIELDS, type CrimpEndField, type CrimpRole } from './crimpRoles';
import { sampleRows } from './readingColumns';

const SET_UP = /\bHOSE[._]CRIMPSETUP\(/i;

/** Whether formulas give a column what the catalogue says of the crimp. */
function isLookedUp(cells: SheetCells, table: FoundTable, column: number): boolean {
  return sampleRows(table).some(row => {
    const from = cells.filledBy(row, column) ?? { row, column };
    return SET_UP.test(cells.formula(from.row, from.column));
  });
}

const fieldOf = (role: CrimpRole): CrimpEndField | undefined =>
  CRIMP_END_FIELDS.find(field => role === field || role === `${field}A` || role === `${field}B`);

/** Whether columns of limits speak of the same end as a role. */
function hasLimits({ columns }: CrimpColumns, role: CrimpRole, field: CrimpEndField): boolean {
  const end = role.slice(field.length);
  const ends = (end === '' ? ['', 'A', 'B'] : [end, '']) as readonly ('' | 'A' | 'B')[];
  return ends.some(each => columns[`smallest${each}`] !== undefined && columns[`largest${each}`] !== undefined);
}

/**
 * Columns that repeat the catalogue beside what the sheet says by itself: its own column, its limits, or a cell above the table. They do
 * not count before it.
 * @param above what is stated above the table
 * @returns the corrections with those columns set aside
 */
export function withoutLookedUp(
  cells: SheetCells,
  table: FoundTable,
  corrections: HeadingCorrections,
  above: ReadonlySet<string>,
  find: (corrections: HeadingCorrections) => CrimpColumns,
): HeadingCorrections {
  const names = headingNames(table.headings);
  const keys = names.flatMap((name, index) => {
    const key = correctionKey(name);
    const isFree = name !== '' && !corrections.has(key);
    return isFree && isLookedUp(cells, table, table.block.column + index) ? [[table.block.column + index, key] as const] : [];
  });
  if (keys.length === 0) return corrections;
  const all = find(corrections);
  const own = find(new Map([...corrections, ...keys.map(([, key]) => [key, 'none'] as const)]));
  const outranks = (column: number) =>
    (Object.keys(all.columns) as CrimpRole[]).some(role => {
      const field = all.columns[role] === column ? fieldOf(role) : undefined;
      if (field === undefined) return false;
      if (own.columns[role] !== undefined) return true;
      if (field !== 'target' && field !== 'tolerance') return false;
      const isAbove = above.has(field) || (field === 'tolerance' && above.has('toleranceWidth'));
      return isAbove || hasLimits(own, role, field);
    });
  return new Map([...corrections, ...keys.flatMap(([column, key]) => (outranks(column) ? [[key, 'none'] as const] : []))]);
}
