import { nameOfCell } from '../../cells/sheetCell';
import { headingUnit } from '../../core/units/headingUnit';
import { measureFromText } from '../../core/units/measureText';
import { endsOfHeading } from '../table/endOfHeading';
import type { FoundTable } from '../table/findTables';
import { crimperColumn, nameColumns } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { CatalogueState } from '../catalogue/catalogueState';
import { NO_ANSWERS, type TableAnswers, type TableKind } from '../table/tableAnswers';
import type { TableQuestion } from '../table/tableQuestion';
import type { HostBlock } from '../../workbook/hostTable';
import { columnsByRole, type ColumnsByRole } from '../table/tableColumns';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { COLUMN_ROLES, OF_END_A, READING, type CrimpEndRole, type EndLetter, type Role } from './columnRoles';
import type { CrimpRole } from '../crimps/crimpRoles';
import { blockColumns, crimpBlocks, crimpsIn, type CrimpBlock } from './crimpBlocks';
import { crimpFacts, openLimits, type CrimpFacts } from './crimpFacts';
import type { Run } from '../table/cellRuns';

/** Which column is what; all roles but those of readings have one column. */
export type Columns = Readonly<Partial<Record<Role, Run>>>;

type OneColumn = Exclude<Role, 'readings' | `${CrimpEndRole}B`>;

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
  return crimpsIn(cells, table, NO_ANSWERS, {}) ? 'crimps' : 'jobs';
}

/** Columns by their words and by the names that stand in them. */
function namedColumns(
  cells: SheetCells,
  table: FoundTable,
  parts: CatalogueParts,
  corrections: HeadingCorrections,
): Partial<Record<OneColumn, number>> {
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
  return found;
}

type CatalogueParts = Pick<CatalogueState, 'isHose' | 'isFitting' | 'isMachine' | 'largestSpread'> & {
  readonly present?: boolean;
};

/** Which columns of a table our functions can take, and what they judge its crimps by. */
export interface ReadColumns {
  readonly columns: Columns;
  /** Undefined where the table has no readings. */
  readonly crimps: CrimpFacts | undefined;
  readonly questions: readonly TableQuestion[];
}

/** A block without the columns of some fields. */
function without(block: CrimpBlock, isLeftOut: (field: string, role: CrimpRole) => boolean): CrimpBlock {
  const roles = Object.entries(block.roles).filter(([field, role]) => !isLeftOut(field, role));
  return { ...block, roles: Object.fromEntries(roles) };
}

const columnsIn = ({ first, last }: Run): number[] => Array.from({ length: last - first + 1 }, (_, i) => first + i);

/** The columns of a table: as somebody said, by words, by the names in them; readings and limits as the reader of crimps finds them. */
export function readColumns(
  cells: SheetCells,
  table: FoundTable,
  parts: CatalogueParts = {},
  answers: TableAnswers = NO_ANSWERS,
  hostTables: readonly HostBlock[] = [],
): ReadColumns {
  const found = namedColumns(cells, table, parts, answers.role);
  const crimps = crimpsIn(cells, table, answers, parts, hostTables);
  const spans = (columns: Partial<Record<OneColumn, number>>): Columns =>
    Object.fromEntries(Object.entries(columns).map(([role, column]) => [role, { first: column, last: column }]));
  if (!crimps) return { columns: spans(found), crimps: undefined, questions: [] };
  for (const role of OF_END_A) delete found[role];
  const canLookUp = parts.present === true && found.hose !== undefined && found.fittingA !== undefined;
  const asked = new Map<EndLetter, TableQuestion>();
  const blocks = crimpBlocks(crimps).map(each => {
    // Words below a heading like `Crimp` are no target, and no tolerance.
    const block = without(
      each,
      (field, role) => /^(?:target|tolerance)$/.test(field) && !holdsNumbers(cells, table, crimps.columns[role]!),
    );
    const open = openLimits(crimps, block, canLookUp);
    if (open && open !== 'none') asked.set(block.end, open);
    return open === 'none' ? without(block, field => field === 'smallest' || field === 'largest') : block;
  });
  const columns: Columns = Object.assign({}, ...blocks.map(block => blockColumns(crimps, block)));
  const taken = new Set(Object.values(columns).flatMap(columnsIn));
  const free = Object.fromEntries(Object.entries(found).filter(([, column]) => !taken.has(column)));
  return {
    columns: { ...spans(free), ...columns },
    crimps: crimpFacts(crimps, blocks, new Set(asked.keys()), parts),
    questions: [...new Map([...asked.values()].map(question => [question.sentence, question])).values()],
  };
}

/** Which columns of a table our functions can take. */
export const tableColumnsOf = (...[cells, table, parts, answers]: Parameters<typeof readColumns>): Columns =>
  readColumns(cells, table, parts, answers).columns;
