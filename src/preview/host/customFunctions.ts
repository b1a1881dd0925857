/** The codes a worksheet function may name; the values are what a cell shows. */
const ErrorCode = {
  invalidValue: '#VALUE!',
  notAvailable: '#N/A',
  divisionByZero: '#DIV/0!',
  invalidNumber: '#NUM!',
  nullReference: '#NULL!',
  invalidName: '#NAME?',
  invalidReference: '#REF!',
} as const;

/** What a function throws or returns to put an error value into a cell; errors in arguments arrive as this, too. */
export class CellError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** A function as functions.js registers it: shaped arguments, then the invocation. */
export type AssociatedFunction = (...args: unknown[]) => unknown;

/** The object that functions.js finds as the global `CustomFunctions`. */
export interface CustomFunctionsGlobal {
  associate(id: string | Readonly<Record<string, AssociatedFunction>>, run?: AssociatedFunction): void;
  readonly Error: typeof CellError;
  readonly ErrorCode: typeof ErrorCode;
}

/**
 * A `CustomFunctions` object of our own, for pages and tests without Excel.
 * @returns the global for functions.js, and the functions it associates, by id in capitals
 */
export function createCustomFunctions(): { global: CustomFunctionsGlobal; functions: Map<string, AssociatedFunction> } {
  const functions = new Map<string, AssociatedFunction>();
  const global: CustomFunctionsGlobal = {
    associate(id, run) {
      for (const [key, value] of typeof id === 'string' ? [[id, run] as const] : Object.entries(id)) {
        if (typeof value !== 'function') throw new TypeError(`CustomFunctions.associate: ${key} is no function`);
        functions.set(key.toUpperCase(), value);
      }
    },
    Error: CellError,
    ErrorCode,
  };
  return { global, functions };
}
