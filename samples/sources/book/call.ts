import './worksheetHost';
import type { Worksheet } from 'exceljs';
import { worksheetFunctions } from '../../../src/functions/register';
import { blockOfCells, type CachedValue } from './cachedValue';

/** Id of one of our worksheet functions. */
export type FunctionId = keyof typeof worksheetFunctions;

/** A range of a sheet as an argument; without a sheet, of the sheet the formula stands in. */
export interface RangeArgument {
  readonly range: string;
  readonly sheet?: string;
  /** The defined name that the formula says instead of the address. */
  readonly name?: string;
}

/** An argument of a formula: a range, a number, a text, or nothing (left out between two commas). */
export type Argument = RangeArgument | number | string | undefined;

/** A call of one of our worksheet functions, as it stands in a cell. */
export interface Call {
  readonly id: FunctionId;
  readonly args: readonly Argument[];
}

/** `HOSE.ID(…)`. */
export function call(id: FunctionId, ...args: Argument[]): Call {
  return { id, args };
}

/** A range as an argument. */
export function at(range: string, sheet?: string): RangeArgument {
  return sheet === undefined ? { range } : { range, sheet };
}

/** A defined name as an argument. */
export function named(name: string, sheet: string, range: string): RangeArgument {
  return { name, sheet, range };
}

function argumentText(argument: Argument): string {
  if (argument === undefined) return '';
  if (typeof argument === 'number') return String(argument);
  if (typeof argument === 'string') return `"${argument.replaceAll('"', '""')}"`;
  if (argument.name !== undefined) return argument.name;
  if (argument.sheet === undefined) return argument.range;
  return /^[A-Za-z]\w*$/.test(argument.sheet) ? `${argument.sheet}!${argument.range}` : `'${argument.sheet}'!${argument.range}`;
}

/** A call as an .xlsx file stores it (without `=`). */
export function storedText({ id, args }: Call): string {
  return `_xldudf_HOSE_${id}(${args.map(argumentText).join(',')})`;
}

function argumentCells(argument: Argument, sheet: Worksheet): CachedValue[][] | null {
  if (argument === undefined) return null;
  if (typeof argument !== 'object') return [[argument]];
  const source = argument.sheet === undefined ? sheet : sheet.workbook.getWorksheet(argument.sheet);
  if (!source) throw new Error(`no sheet ${argument.sheet} for ${argument.range}`);
  return blockOfCells(source, argument.range);
}

/**
 * What the call gives: our function called with what stands in its arguments' cells. An error of the whole call is one cell.
 */
export async function evaluate(what: Call, sheet: Worksheet): Promise<unknown[][]> {
  const worksheetFunction = worksheetFunctions[what.id] as (...args: unknown[]) => unknown[][] | Promise<unknown[][]>;
  try {
    return await worksheetFunction(...what.args.map(argument => argumentCells(argument, sheet)));
  } catch (error) {
    if (error instanceof CustomFunctions.Error) return [[error]];
    throw error;
  }
}
