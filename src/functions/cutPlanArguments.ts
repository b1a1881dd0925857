import type { CutPlanProblem } from '../core/cutplan/cutPlan';
import { TradeError } from '../core/tradeError';
import type { Decimal } from '../core/units/decimal';
import { list } from '../cells/list';
import { choice, number, quoted, type CellReader, type FilledCell } from '../cells/readers';
import { optionalSingle, single, type Cells } from '../cells/singles';

const readUnit = choice('mm', 'in');
const readSeconds = number({ sign: 'positive', marks: 'noLength', hint: 'enter seconds', like: '3' });
const MOST_SECONDS = 600;

type Cell = FilledCell | null;

interface ListRow {
  readonly row: number;
  readonly length: Cell;
  readonly quantity: Cell;
}

/** Two lists side by side without their wholly blank rows (0 and 0 is what some hosts make of blanks). */
function pairs(lengthLabel: string, lengths: Cells, quantityLabel: string, quantities: Cells): ListRow[] {
  const length = list(lengthLabel, lengths);
  const quantity = list(quantityLabel, quantities);
  if (quantity.length !== length.length && quantity.length > 1) {
    throw new TradeError(
      'shape',
      '',
      `${lengthLabel} has ${length.length} rows, ${quantityLabel} has ${quantity.length}`,
      'give columns of the same number of rows',
    );
  }
  const isOne = quantity.length === 1;
  const isBlank = (row: ListRow) =>
    (row.length === null && (isOne || row.quantity === null)) ||
    (row.length === 0 && (row.quantity === null || row.quantity === 0));
  return length
    .map((cell, index) => ({ row: index + 1, length: cell, quantity: quantity[isOne ? 0 : index]! }))
    .map(row => ({ ...row, length: row.length ?? null, quantity: row.quantity ?? null }))
    .filter(row => !isBlank(row));
}

function readCount(cell: FilledCell, label: string): number {
  const value = number({ sign: 'notNegative', marks: 'noLength', hint: 'enter a whole number', like: '12' })(cell, label);
  if (value.isInteger()) return value.toNumber();
  throw new TradeError('range', label, `is ${quoted(cell)}`, 'enter a whole number');
}

function required<T>(cell: Cell, label: string, read: CellReader<T>): T {
  if (cell === null) throw new TradeError('blank', label, 'is blank', 'fill it in, or clear the row');
  return read(cell, label);
}

/** The arguments of CUTPLAN as they come from the sheet. */
export type CutPlanCells = Readonly<
  Record<
    | 'lengths'
    | 'quantities'
    | 'stockLengths'
    | 'stockQuantities'
    | 'kerf'
    | 'keep'
    | 'squaring'
    | 'seconds'
    | 'unit'
    | 'handling',
    Cells
  >
>;

/**
 * The problem that CUTPLAN's arguments state.
 * @returns the problem, and how to write a length: fractions as they were typed, everything else as a decimal number
 * @throws TradeError that names the argument and its row
 */
export function cutPlanProblem(cells: CutPlanCells): { problem: CutPlanProblem; asTyped: (length: Decimal) => string } {
  const unit = optionalSingle('unit', cells.unit, readUnit) ?? 'mm';
  const millimetres = unit === 'mm';
  const readLength = number({ sign: 'positive', zeroIsBlank: true, millimetres, hint: 'enter a length' });
  const readAllowance = number({ sign: 'notNegative', millimetres, hint: 'enter a length' });
  const typed = new Map<string, string>();
  const pieces = pairs('lengths', cells.lengths, 'quantities', cells.quantities).map(row => {
    const length = required(row.length, `length in row ${row.row}`, readLength);
    if (typeof row.length === 'string' && row.length.includes('/')) typed.set(length.toString(), row.length.trim());
    return { length, quantity: required(row.quantity, `quantity in row ${row.row}`, readCount) };
  });
  const stock = pairs('stock lengths', cells.stockLengths, 'stock quantities', cells.stockQuantities).map(row => ({
    length: required(row.length, `stock length in row ${row.row}`, readLength),
    quantity: row.quantity === null ? undefined : readCount(row.quantity, `stock quantity in row ${row.row}`),
  }));
  const seconds = optionalSingle('seconds', cells.seconds, readSeconds);
  if (seconds?.gt(MOST_SECONDS)) {
    throw new TradeError('range', 'seconds', `is ${seconds}`, `give at most ${MOST_SECONDS}`);
  }
  if (pieces.every(piece => piece.quantity === 0)) {
    throw new TradeError('blank', 'lengths', 'have nothing to cut', 'fill in lengths and quantities');
  }
  if (stock.length === 0) throw new TradeError('blank', 'stock lengths', 'are blank', 'fill in the stock there is');
  const problem: CutPlanProblem = {
    pieces,
    stock,
    kerf: single('kerf', cells.kerf, readAllowance),
    keep: optionalSingle('keep', cells.keep, readAllowance),
    squaring: optionalSingle('squaring', cells.squaring, readAllowance),
    handling: optionalSingle('handling', cells.handling, readAllowance),
    seconds: seconds?.toNumber(),
    unit,
  };
  return { problem, asTyped: length => typed.get(length.toString()) ?? length.toString() };
}
