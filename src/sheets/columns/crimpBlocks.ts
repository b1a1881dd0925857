import { lengthUnitOf } from '../../core/units/lengthUnit';
import { CrimpRowReader } from '../crimps/crimpRowReader';
import type { CrimpRole } from '../crimps/crimpRoles';
import { crimpTable, readingsIn, type CrimpTable } from '../crimps/crimpTable';
import { findTables, type FoundTable } from '../table/findTables';
import type { KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import type { HostBlock } from '../../workbook/hostTable';
import type { Run } from '../table/cellRuns';
import { CRIMP_FIELDS, roleOfEnd, type CrimpEndRole, type EndLetter, type Role } from './columnRoles';

/** The crimps of one end, or of all rows alike, as the reader of crimps finds them. */
export interface CrimpBlock {
  readonly end: EndLetter;
  /** Its columns of readings, from left to right. */
  readonly readings: readonly number[];
  /** What the reader of crimps calls the column of a field. */
  readonly roles: Readonly<Partial<Record<(typeof CRIMP_FIELDS)[number], CrimpRole>>>;
}

/** The table as the reader of crimps reads it; undefined where no crimp has two readings in a row. */
export function crimpsIn(
  cells: SheetCells,
  table: FoundTable,
  answers: TableAnswers,
  parts: KnownParts,
  hostTables: readonly HostBlock[] = [],
): CrimpTable | undefined {
  const found = crimpTable(cells, table, answers, parts);
  if (readingsIn(found) < 2) return undefined;
  if (table.block.row === cells.used.row) return found;
  const above = findTables(cells, hostTables, answers.role).filter(({ block }) => block.row < table.block.row);
  const others = above.filter(each => readingsIn(crimpTable(cells, each, answers, parts)) > 0);
  return others.length > 0 ? crimpTable(cells, table, answers, parts, others) : found;
}

const readingColumns = ({ columns }: CrimpTable, word: 'reading' | 'readingB', count: number) =>
  Array.from({ length: count }, (_, index) => columns[`${word}${index + 1}`]!);

/** One block, or one for each end where both lie in a row. */
export function crimpBlocks(crimps: CrimpTable): readonly CrimpBlock[] {
  const [ofA, ofB] = crimps.readings;
  const isEnds = crimps.layout === 'ends';
  const block = (end: EndLetter, readings: readonly number[]): CrimpBlock => {
    const roles = CRIMP_FIELDS.flatMap(field => {
      const own = [`${field}${end}`, field] as const;
      const role = (isEnds ? own : [...own].reverse()).find(each => crimps.columns[each] !== undefined);
      return role ? [[field, role] as const] : [];
    });
    return { end, readings, roles: Object.fromEntries(roles) };
  };
  const first = block('A', readingColumns(crimps, 'reading', ofA));
  return isEnds ? [first, block('B', readingColumns(crimps, 'readingB', ofB))] : [first];
}

/** Columns side by side from the first on. */
function firstRun(columns: readonly number[]): Run | undefined {
  const [first] = columns;
  if (first === undefined) return undefined;
  const gap = columns.findIndex((column, index) => column !== first + index);
  return { first, last: first + (gap < 0 ? columns.length : gap) - 1 };
}

/** The columns of a block by the roles that formulas take them by. */
export function blockColumns(crimps: CrimpTable, { end, readings, roles }: CrimpBlock): Partial<Record<Role, Run>> {
  const run = firstRun(readings);
  const fields = Object.entries(roles) as [CrimpEndRole, CrimpRole][];
  return Object.fromEntries([
    ...fields.map(([field, role]) => {
      const column = crimps.columns[role]!;
      return [roleOfEnd(field, end), { first: column, last: column }] as const;
    }),
    ...(run ? [[roleOfEnd('readings', end), run] as const] : []),
  ]);
}

/** Names hose and coupling of a row as the reader of crimps does. */
export function pairOf(crimps: CrimpTable, end: EndLetter, row: number): readonly [hose: string, fitting: string] {
  const unit = lengthUnitOf(crimps.unit ?? crimps.likelyUnit);
  const crimp = { row, rows: [row], end: crimps.layout === 'ends' ? end : ('' as const), readings: [] };
  const reader = new CrimpRowReader(crimps, crimp, unit);
  return [reader.name('hose'), reader.name('fitting')];
}
