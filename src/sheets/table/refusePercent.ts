import { TradeError } from '../../core/tradeError';
import type { CellValue } from '../../workbook/workbook';

/** @throws TradeError where a number is shown as a percentage: its cell holds 0.01 and shows 1 %, and neither is a measure */
export function refusePercent(cell: CellValue, format: string, label: string): void {
  if (typeof cell !== 'number' || !format.includes('%')) return;
  const advice = 'a percentage has no unit: write it in the unit of the column, in a cell with a number format without %';
  throw new TradeError('unit', label, `is ${Number((cell * 100).toPrecision(12))} %`, advice);
}
