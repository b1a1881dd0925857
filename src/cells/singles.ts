import { TradeError } from '../core/tradeError';
import { cellContent, IncomingError } from './cellContent';
import { passedOn } from './cellError';
import type { CellReader } from './readers';

/** What a host passes for an argument: a block of cells, or nothing. */
export type Cells = readonly (readonly unknown[])[] | null | undefined;

/** An argument as a block of at least one cell; a host that passes a bare value is forgiven. */
export function cellsOfArgument(cells: Cells): readonly (readonly unknown[])[] {
  if (!Array.isArray(cells)) return [[cells ?? null]];
  return cells.length > 0 && Array.isArray(cells[0]) ? cells : [cells.length > 0 ? cells : [null]];
}

function onlyCell(label: string, cells: Cells): unknown {
  const block = cellsOfArgument(cells);
  if (block.length > 1 || block[0]!.length > 1) {
    const size = `${block.length} × ${block[0]!.length} cells`;
    throw new TradeError('shape', label, `came as ${size}`, 'one value serves all rows here; give a single cell');
  }
  return block[0]![0];
}

/**
 * An optional argument that takes one value for the whole call.
 * @returns the value, or undefined where it is omitted or blank. An error value that came in is thrown on as a cell error.
 */
export function optionalSingle<T>(label: string, cells: Cells, read: CellReader<T>): T | undefined {
  const content = cellContent(onlyCell(label, cells));
  if (content === null) return undefined;
  if (content instanceof IncomingError) throw passedOn(content, label);
  return read(content, label);
}

/** A required argument that takes one value for the whole call. */
export function single<T>(label: string, cells: Cells, read: CellReader<T>): T {
  const value = optionalSingle(label, cells, read);
  if (value === undefined) throw new TradeError('blank', label, 'is blank', 'fill it in');
  return value;
}
