import type { Decimal } from '../../core/units/decimal';
import { TradeError } from '../../core/tradeError';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { findTables } from '../table/findTables';
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

/** The table of a cut list; undefined where a column has gone. */
function cutTable(cells: SheetCells): TableReader<Role> | undefined {
  for (const table of findTables(cells)) {
    const columns = columnsByRole(table, ROLES);
    // Lists of old have a row a cut, and no quantity.
    if (ROLES.every(([role]) => role === 'quantity' || columns[role] !== undefined))
      return new TableReader(cells, table, columns, MEASURES, NO_ANSWERS);
  }
  return undefined;
}

/**
 * Reads a cut list as `cutListSheet` writes it; people may have added columns, ticked and sorted it.
 * @param unit of the lengths that come out
 * @returns undefined where the sheet is no cut list, or a row of it cannot be read
 */
export function readCutList(content: RangeContent | undefined, unit: LengthUnit): CutList | undefined {
  if (content?.values[0]?.[0] !== CUT_LIST_TITLE) return undefined;
  const cells = new SheetCells(content);
  const reader = cutTable(cells);
  if (!reader) return undefined;
  const { hose, length } = reader.columns;
  const rows = tableRows(cells, reader.table, { name: hose, keys: [hose!, length!], takesHidden: true });
  try {
    const cuts = rows.flatMap(({ row, kind }) => {
      const found = kind === 'line' ? reader.measure(row, 'length') : undefined;
      const name = (role: Role) => reader.name(row, role);
      if (!found || name('hose') === '') return [];
      const cut = { reel: name('reel'), hose: name('hose'), line: name('line'), length: lengthIn(found, unit) };
      const times = reader.has('quantity') ? (reader.count(row, 'quantity', 'quantity') ?? 1) : 1;
      return Array.from({ length: times }, () => cut);
    });
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
