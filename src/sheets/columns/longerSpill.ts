import { addressOf, cellAddress } from '../../workbook/a1';
import { spilledResult } from '../../workbook/spilledResult';
import type { Change } from '../../workbook/workbook';
import type { OwnColumn, ReadTable } from './ownColumns';

/** Rows that get what they lack, and how. */
export interface FilledRows {
  readonly rows: readonly number[];
  readonly changes: readonly Change[];
}

const NOTHING_FILLED: FilledRows = { rows: [], changes: [] };

const RANGE = /(\$?[A-Z]{1,3}\$?)(\d{1,7})(:\$?[A-Z]{1,3}\$?)(\d{1,7})/gi;

/** One formula that serves all rows from its own on, made to reach a later row; undefined where it is of its own row only. */
export function reaching(
  formula: string,
  row: number,
  last: number,
): { readonly formula: string; readonly before: number } | undefined {
  const ends = [...formula.matchAll(RANGE)].filter(([, , first, , end]) => Number(first) === row + 1 && Number(end) > row + 1);
  if (ends.length === 0) return undefined;
  const before = Math.max(...ends.map(([, , , , end]) => Number(end)));
  const longer = formula.replace(RANGE, (whole, a: string, first: string, b: string, end: string) =>
    Number(first) === row + 1 && Number(end) === before ? `${a}${first}${b}${last + 1}` : whole,
  );
  return { formula: longer, before: before - 1 };
}

/** One formula for all rows is made to reach the last line, where nothing is in its way; the new cells look like those above. */
export function longerSpill({ cells, table: { sheet } }: ReadTable, { column, filled }: OwnColumn, last: number): FilledRows {
  const row = filled[0]!;
  const own = cells.formula(row, column);
  const found = filled.length === 1 ? reaching(own, row, last) : undefined;
  if (!found || found.before >= last) return NOTHING_FILLED;
  const columns = Array.from({ length: spilledResult(own)?.columns.length ?? 1 }, (_, i) => column + i);
  const rows = Array.from({ length: last - found.before }, (_, i) => found.before + 1 + i);
  if (rows.some(each => columns.some(at => !cells.isEmpty(each, at) || cells.merge(each, at)))) return NOTHING_FILLED;
  const formats = columns.flatMap((at): Change[] => {
    const numberFormat = cells.format(found.before, at) || 'General';
    const address = addressOf({ row: rows[0]!, column: at, rows: rows.length, columns: 1 });
    const isSame = rows.every(each => (cells.format(each, at) || 'General') === numberFormat);
    return isSame ? [] : [{ kind: 'format', at: { sheet, address }, numberFormat }];
  });
  const at = { sheet, address: cellAddress({ row, column }) };
  return { rows, changes: [...formats, { kind: 'formulas', at, formulas: [[found.formula]] }] };
}
