import type { Decimal } from '../../core/units/decimal';
import { TradeError } from '../../core/tradeError';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { lengthOfCell } from '../table/lengthCell';
import { cellOf, dataRows, findTable, textOf } from '../table/sheetTable';
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

const HEADINGS = {
  reel: /^reel$/,
  hose: /^hose$/,
  length: /^cut length$/,
  line: /^line$/,
} as const;

/**
 * Reads a cut list as `cutListSheet` writes it; people may have added columns, ticked and sorted it.
 * @param unit of the lengths that come out
 * @returns undefined where the sheet is no cut list, or a row of it cannot be read
 */
export function readCutList(content: RangeContent | undefined, unit: LengthUnit): CutList | undefined {
  if (content?.values[0]?.[0] !== CUT_LIST_TITLE) return undefined;
  const table = findTable(content, HEADINGS, ['reel', 'hose', 'length', 'line']);
  if (!table) return undefined;
  try {
    const cuts = dataRows(table).flatMap(row => {
      const length = lengthOfCell(cellOf(table, row, 'length'), 'cut length', table.columns.length!.unit, unit);
      const [reel, hose, line] = (['reel', 'hose', 'line'] as const).map(field => textOf(table, row, field)) as [
        string,
        string,
        string,
      ];
      return length && hose !== '' ? [{ reel, hose, line, length }] : [];
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
