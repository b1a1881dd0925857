/** The part of Excel's runtime that worksheet functions need: errors, and a place to register. */
export class FakeCellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

const registered = new Map<string, (...args: unknown[]) => any>();

(globalThis as Record<string, unknown>).CustomFunctions = {
  Error: FakeCellError,
  ErrorCode: {
    invalidValue: '#VALUE!',
    notAvailable: '#N/A',
    divisionByZero: '#DIV/0!',
    invalidNumber: '#NUM!',
    nullReference: '#NULL!',
  },
  associate: (id: string, worksheetFunction: (...args: unknown[]) => unknown) => registered.set(id, worksheetFunction),
};

/** A result as the sheet shows it: errors as `#CODE sentence`, so that tests read like cells. */
export function shown(result: readonly (readonly unknown[])[]): unknown[][] {
  return result.map(row => row.map(cell => (cell instanceof FakeCellError ? `${cell.code} ${cell.message}` : cell)));
}

/** Calls a worksheet function; an error of the whole call comes back as its one cell. */
export function called(call: () => any[][]): unknown[][] {
  try {
    return shown(call());
  } catch (error) {
    if (error instanceof FakeCellError) return shown([[error]]);
    throw error;
  }
}

/** A column of cells. */
export const col = (...cells: unknown[]): any[][] => cells.map(cell => [cell]);
