import type { Decimal } from '../../core/units/decimal';
import { TradeError } from '../../core/tradeError';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { findTables, type FoundTable } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { NO_ANSWERS } from '../table/tableAnswers';
import { columnsByRole, type RoleList } from '../table/tableColumns';
import { TableReader } from '../table/tableReader';
import { tableRows } from '../table/tableRows';
import { CUT_LIST_TITLE } from './cutListSheet';

/** One cut of a cut list. */
export interface ListedCut {
  /** Number of the piece of stock on the list. */
  readonly reel: string;
  readonly hose: string;
  /** The job line it is for, as the list names it. */
  readonly line: string;
  readonly length: Decimal;
}

/** A cut list that stands in the workbook. */
export interface CutList {
  readonly sheet: string;
  /** First words of its source: `From sheet Jobs (9 lines) …`. */
  readonly source: string;
  readonly cuts: readonly ListedCut[];
}

type Role = 'reel' | 'hose' | 'length' | 'line' | 'quantity';
const ROLES: RoleList<Role> = [
  ['length', 'cutLength'],
  ['reel', 'reel'],
  ['hose', 'hose'],
  ['line', 'line'],
  ['quantity', 'quantity'],
];
const MEASURES = { length: { quantity: 'length', group: 'length', label: 'cut length' } } as const;

const OF_A_CUT = ['length', 'line', 'quantity'] as const satisfies readonly Role[];

/** Readers of a table, one for each of the cuts that stand side by side: their columns have the same headings. */
function cutReaders(cells: SheetCells, table: FoundTable): readonly TableReader<Role>[] {
  const columns = columnsByRole(table, ROLES);
  // Lists of old have a row a cut, and no quantity.
  if (ROLES.some(([role]) => role !== 'quantity' && columns[role] === undefined)) return [];
  const { headings, block } = table;
  const alike = (column: number | undefined) =>
    column === undefined
      ? []
      : headings.flatMap((heading, index) => (heading === headings[column - block.column] ? [block.column + index] : []));
  const places = OF_A_CUT.map(role => [role, alike(columns[role])] as const);
  const across = alike(columns.length).length;
  return Array.from({ length: across }, (_, index) => {
    const own = Object.fromEntries(places.map(([role, at]) => [role, at[index]]));
    return new TableReader(cells, table, { ...columns, ...own }, MEASURES, NO_ANSWERS);
  });
}

function cutsOf(reader: TableReader<Role>, row: number, unit: LengthUnit): readonly ListedCut[] {
  const found = reader.measure(row, 'length');
  const name = (role: Role) => reader.name(row, role);
  if (!found || name('hose') === '') return [];
  const cut = { reel: name('reel'), hose: name('hose'), line: name('line'), length: lengthIn(found, unit) };
  const times = reader.has('quantity') ? (reader.count(row, 'quantity', 'quantity') ?? 1) : 1;
  return Array.from({ length: times }, () => cut);
}

/**
 * Reads a cut list as `cutListSheet` writes it; people may have added columns, ticked and sorted it.
 * @param unit of the lengths that come out
 * @returns undefined where the sheet is no cut list, or a row of it cannot be read
 */
export function readCutList(content: RangeContent | undefined, unit: LengthUnit): CutList | undefined {
  if (content?.values[0]?.[0] !== CUT_LIST_TITLE) return undefined;
  const cells = new SheetCells(content);
  const readers = findTables(cells)
    .map(table => cutReaders(cells, table))
    .find(found => found.length > 0);
  if (!readers) return undefined;
  const [{ table, columns }] = readers as [TableReader<Role>];
  const keys = [columns.hose!, ...readers.map(reader => reader.columns.length!)];
  const rows = tableRows(cells, table, { name: columns.hose, keys, takesHidden: true }).filter(({ kind }) => kind === 'line');
  try {
    const cuts = rows.flatMap(({ row }) => readers.flatMap(reader => cutsOf(reader, row, unit)));
    return { sheet: content.sheet, source: String(content.values[1]?.[0] ?? ''), cuts };
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

/** All cut lists of a workbook that were made from a job sheet, the newest first: new sheets are added behind the others. */
export async function cutListsOf(workbook: Workbook, unit: LengthUnit, jobSheet?: string): Promise<readonly CutList[]> {
  const lists: CutList[] = [];
  for (const sheet of await workbook.sheets()) {
    const list = readCutList(await workbook.used(sheet), unit);
    if (list && (jobSheet === undefined || list.source.startsWith(`From sheet ${jobSheet} (`))) lists.unshift(list);
  }
  return lists;
}
