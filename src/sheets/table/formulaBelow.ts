import { SHEET_ROWS } from '../../workbook/a1';

const TOKEN = /"[^"]*"|'(?:[^']|'')*'|(?<![\p{L}\p{N}_.$])(\$?[A-Z]{1,3})(\$?)(\d{1,7})(?![\p{L}\p{N}_.(])/giu;

/**
 * A formula of one row as it reads some rows further down: relative rows move, those with `$` stay.
 * @returns undefined where it belongs to more than its row (its relative references name another row) or names columns of a host table
 */
export function formulaBelow(formula: string, row: number, down: number): string | undefined {
  if (formula === '' || formula.includes('[') || formula.includes('#')) return undefined;
  let isOfRow = true;
  const moved = formula.replace(TOKEN, (whole: string, column?: string, mark?: string, digits?: string) => {
    if (digits === undefined || mark === '$') return whole;
    if (Number(digits) !== row + 1) isOfRow = false;
    return `${column}${Math.min(SHEET_ROWS, Number(digits) + down)}`;
  });
  return isOfRow ? moved : undefined;
}
