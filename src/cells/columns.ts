import type { Decimal } from '../core/units/decimal';
import { TradeError } from '../core/tradeError';
import { cellContent, IncomingError, type CellContent } from './cellContent';
import { passedOn } from './cellError';
import { number, readingOnce, type CellReader, type FilledCell } from './readers';
import { cellsOfArgument, type Cells } from './singles';

/** A row-wise argument: one value or a column (readings: a block), read row by row. */
export interface Column<T> {
  /** Name in error sentences. */
  readonly label: string;
  /** Rows that came; 1 is stretched over all rows. */
  readonly height: number;
  /** True where a row whose readings are blank has not been filled in yet, whatever else stands in it. */
  readonly isReadings: boolean;
  /** True where nothing is filled in at that row. */
  isBlank(row: number): boolean;
  /** True where nothing is filled in, or the 0 that some hosts make of a blank. */
  isBlankOrZero(row: number): boolean;
  /** The first error value that came in at that row. */
  errorAt(row: number): IncomingError | undefined;
  /** The value at that row; throws a TradeError that names the argument, or the error value that came in. */
  at(row: number): T;
}

function missing(label: string): TradeError {
  return new TradeError('blank', label, 'is blank', 'fill it in');
}

function cellColumn<T>(label: string, cells: Cells, atBlank: () => T, read: CellReader<T>): Column<T> {
  const rows = cellsOfArgument(cells);
  if (rows[0]!.length > 1) {
    throw new TradeError('shape', label, `came as ${rows[0]!.length} columns`, 'give one value or one column');
  }
  const content = (row: number) => cellContent(rows[rows.length === 1 ? 0 : row]?.[0]);
  const readOnce = readingOnce(read);
  return {
    label,
    height: rows.length,
    isReadings: false,
    isBlank: row => content(row) === null,
    isBlankOrZero: row => content(row) === null || content(row) === 0,
    errorAt: row => {
      const cell = content(row);
      return cell instanceof IncomingError ? cell : undefined;
    },
    at: row => {
      const cell = content(row);
      if (cell instanceof IncomingError) throw passedOn(cell, label);
      return cell === null ? atBlank() : readOnce(cell, label);
    },
  };
}

/** A required row-wise argument. */
export function column<T>(label: string, cells: Cells, read: CellReader<T>): Column<T> {
  return cellColumn<T>(
    label,
    cells,
    () => {
      throw missing(label);
    },
    read,
  );
}

/** A row-wise argument that may be left out, for the whole call or in a row. */
export function optionalColumn<T>(label: string, cells: Cells, read: CellReader<T>): Column<T | undefined> {
  return cellColumn<T | undefined>(label, cells, () => undefined, read);
}

/** The place of each row in the list, from 0, whatever was skipped before it. */
export function rowPlaces(): Column<number> {
  return {
    label: 'row',
    height: 1,
    isReadings: false,
    isBlank: () => true,
    isBlankOrZero: () => true,
    errorAt: () => undefined,
    at: row => row,
  };
}

const readReading = number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the caliper reading' });

/**
 * Caliper readings: a block of two columns or more, one crimp a row. A row without any reading (all blank, or all 0 as some
 * hosts deliver blanks) has not been filled in yet; a row with some readings missing is an error that names the missing one.
 */
export function readingBlock(label: string, cells: Cells): Column<Decimal[]> {
  const rows = cellsOfArgument(cells);
  if (rows[0]!.length < 2) {
    const advice = 'lay the readings of one crimp side by side, one crimp a row, two readings or more';
    throw new TradeError('shape', label, 'came as a single column', advice);
  }
  const cellsAt = (row: number) => rows[rows.length === 1 ? 0 : row]!;
  const isMissing = (cell: CellContent) => cell === null || cell === 0;
  const isUnfilled = (row: number) => cellsAt(row).every(cell => isMissing(cellContent(cell)));
  const readOnce = readingOnce(readReading);
  return {
    label,
    height: rows.length,
    isReadings: true,
    isBlank: isUnfilled,
    isBlankOrZero: isUnfilled,
    errorAt: row =>
      cellsAt(row)
        .map(cellContent)
        .find(cell => cell instanceof IncomingError),
    at: row =>
      cellsAt(row).map((raw, index) => {
        const cell = cellContent(raw);
        const name = `reading ${index + 1}`;
        if (cell instanceof IncomingError) throw passedOn(cell, label);
        if (isMissing(cell))
          throw new TradeError('blank', name, 'is blank or zero', 'take all readings of the crimp, or clear the row');
        return readOnce(cell as FilledCell, name);
      }),
  };
}
