import type { CellValue } from '../../../workbook/workbook';
import type { CopiedParts } from '../parts/copiedParts';
import { NotNative } from '../notNative';

/**
 * How an argument is read: a number or name of the row (`marks` as the function takes inch marks), the readings of the row side by side, a
 * list of numbers, or a word that chooses a formula.
 */
export type ArgumentKind = 'number' | 'plainNumber' | 'name' | 'readings' | 'list' | 'word' | 'catalogue';

/** An argument of one row, as a plain formula names it. */
export interface NativeArgument {
  /** A reference, a number, or a sum of them in brackets. */
  readonly text: string;
  /** It cannot change: a number or a word in the formula itself. */
  readonly isConstant: boolean;
  /** What it is now; of several cells the first, undefined where it is calculated from others. */
  readonly value: CellValue | undefined;
  /** Cells of readings and lists. */
  readonly count: number;
  /** All cells as they are now. */
  readonly values: readonly CellValue[];
  /** A cell held text with an inch or foot mark, which the copy has as a plain number of inches. */
  readonly hasInchMark: boolean;
}

/** The arguments of one row in the order of the function; undefined where one is left out. */
export type NativeArguments = readonly (NativeArgument | undefined)[];

/** A function of ours in functions that every spreadsheet program has. */
export interface NativeFunction {
  readonly arguments: readonly ArgumentKind[];
  /** Columns of its result. */
  readonly width: number;
  /**
   * The formulas of one row without `=`, one a column; where one cannot be said, why not.
   * @throws NotNative where the whole row cannot be said
   */
  row(given: NativeArguments, context: NativeContext): readonly (string | NotNative)[];
  /** What the formula of a column shows where our function shows `text`, if that is not the same. */
  shown?(text: string, column: number): string;
}

/** What a function may lean on besides its arguments. */
export interface NativeContext {
  /** The parts data as the copy has them; undefined where it has none. */
  readonly parts: CopiedParts | undefined;
  /** The cell that holds a column of the same row, where one does; missing where the call is part of another formula. */
  readonly cell?: ((column: number) => string | undefined) | undefined;
}

/** For a function that takes no inch and foot marks. */
export function refuseMarks(call: NativeArguments): void {
  if (call.some(argument => argument?.hasInchMark))
    throw new NotNative('a length has an inch or foot mark, which the function refuses');
}

/** The argument; one that the function needs. */
export function given(call: NativeArguments, index: number): NativeArgument {
  const found = call[index];
  if (!found) throw new NotNative('an argument of the function is missing');
  return found;
}
