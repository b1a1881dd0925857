import { addressOf, SHEET_COLUMNS, cellAddress } from '../../workbook/a1';
import type { CellValue, RangeContent, Workbook } from '../../workbook/workbook';
import { functionCall } from '../../workbook/functionCall';
import { valueText } from './valueText';
import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';

/** One result of ours in the selected row. */
export interface RowResult {
  /** Heading of its column, or the function's name where there is none. */
  readonly title: string;
  readonly text: string;
  readonly verdict?: CrimpVerdict;
  readonly isError: boolean;
}

/** The worst first: a row may hold several verdicts, with and without spread. */
const VERDICTS: readonly CrimpVerdict[] = ['TIGHT', 'LOOSE', 'OVAL', 'UNSURE', 'IN SPEC'];
const HEADING_ROWS = 40;

/** The worst verdict of a row; undefined where it has none. */
export const worstVerdict = (row: readonly RowResult[]): CrimpVerdict | undefined =>
  VERDICTS.find(word => row.some(result => result.verdict === word));

/** Column of the formula of ours that a cell of a row holds or may be spilled from. */
function sourceOf({ values, formulas, column }: RangeContent, line: number, index: number): number | undefined {
  for (let at = index; at >= 0 && values[line]![at] !== ''; at--) {
    const formula = formulas[line]![at]!;
    if (formula) return functionCall(formula) ? column + at : undefined;
  }
  return undefined;
}

/** The nearest text above a cell that is no result of ours: neither a verdict nor what the same column of formulas spills. */
function headingOf(above: RangeContent, column: number, row: number, source: number | undefined): string | undefined {
  const index = column - above.column;
  for (let line = Math.min(row - above.row, above.values.length) - 1; line >= 0; line--) {
    const value = above.values[line]?.[index];
    if (typeof value !== 'string' || value.trim() === '' || above.formulas[line]?.[index]) continue;
    const isSibling = source !== undefined && sourceOf(above, line, index) === source;
    if (!isSibling && !VERDICTS.includes(value as CrimpVerdict)) return value.trim();
  }
  return undefined;
}

/** Whether each cell of a row may be filled from elsewhere by ours: right of a formula of ours up to the next formula, or a verdict. */
function mayBeSpilled(values: readonly CellValue[], formulas: readonly string[]): readonly boolean[] {
  let behindOurs = false;
  return values.map((value, index) => {
    const formula = formulas[index]!;
    if (formula || value === '') behindOurs = functionCall(formula) !== undefined;
    return !formula && value !== '' && (behindOurs || VERDICTS.includes(value as CrimpVerdict));
  });
}

/**
 * The results of ours in the selected row: every cell whose formula is ours, what such a formula spills to its right, and every
 * verdict that is spilled into the row from above.
 */
export async function rowView(workbook: Workbook, cell: RangeContent): Promise<readonly RowResult[]> {
  const line = addressOf({ row: cell.row, column: 0, rows: 1, columns: SHEET_COLUMNS });
  const top = addressOf({
    row: Math.max(0, cell.row - HEADING_ROWS),
    column: 0,
    rows: Math.max(1, Math.min(cell.row, HEADING_ROWS)),
    columns: SHEET_COLUMNS,
  });
  const [row, above] = await workbook.read([
    { sheet: cell.sheet, address: line },
    { sheet: cell.sheet, address: top },
  ]);
  if (!row || !above || row.row !== cell.row) return [];
  const spilled = mayBeSpilled(row.values[0]!, row.formulas[0]!);
  const results = await Promise.all(
    row.values[0]!.map(async (value, index): Promise<RowResult | undefined> => {
      const call = functionCall(row.formulas[0]![index]!);
      const verdict = VERDICTS.find(word => word === value);
      if (value === '' || (!call && !spilled[index])) return undefined;
      const column = row.column + index;
      const own = call || (await workbook.spillParent({ sheet: cell.sheet, address: cellAddress({ row: cell.row, column }) }));
      if (!own) return undefined;
      const title = headingOf(above, column, cell.row, sourceOf(row, 0, index)) ?? call?.id ?? 'CrimpVerdict';
      return { title, text: valueText(value), isError: typeof value === 'object', ...(verdict && { verdict }) };
    }),
  );
  return results.filter((result): result is RowResult => result !== undefined);
}
