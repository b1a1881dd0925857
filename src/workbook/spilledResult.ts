import { blockOf } from './a1';
import { functionCalls, type FunctionCall, type WrittenArgument } from './functionCall';

/** Columns of the row-wise functions' results; functions whose result is a table of its own are not among them. */
export const RESULT_COLUMNS: Readonly<Record<string, number>> = {
  ASSEMBLY: 4,
  BORESIZE: 1,
  CALIBRATIONTURNS: 1,
  CONFORMITY: 1,
  CRIMPCHECK: 1,
  CRIMPDETAIL: 4,
  CRIMPSETUP: 6,
  CUTLENGTH: 1,
  FITTINGDATA: 1,
  HOSEDATA: 1,
  LENGTHCHANGE: 2,
  LENGTHLIMITS: 2,
  NEXTDIAL: 1,
  OVERALLLENGTH: 1,
  PRESSUREDROP: 1,
  RUNSIGNALS: 1,
  SELLPRICE: 1,
  TRIALDIAL: 5,
  UNITCOST: 4,
  VELOCITY: 1,
  VISCOSITY: 1,
};

/** What a formula fills, from its own cell on, with the result of one call. */
export interface SpilledResult {
  readonly call: FunctionCall;
  /** Which columns of the function's result stand side by side; the first is 1. */
  readonly columns: readonly number[];
  readonly rows: number;
  /** Its numbers are rounded down to so many decimals. */
  readonly roundedTo?: number;
}

const CHOSEN = /^=\s*@?\s*CHOOSECOLS\(\s*$/i;
const CHOSEN_COLUMNS = /^((?:\s*,\s*\d+)+)\s*\)\s*$/;
const PICKED = /^=\s*@?\s*INDEX\(\s*$/i;
const PICKED_COLUMN = /^\s*,\s*([01])\s*,\s*(\d+)\s*\)\s*$/;

/** Relative ranges in an expression: absolute ones are looked up, not worked through row by row. */
const RANGE = /(?<![\w$!.])[A-Z]{1,3}\d{1,7}:[A-Z]{1,3}\d{1,7}(?![\w(])/gi;
/** A word in quotes may look like a range. */
const QUOTED = /"[^"]*"/g;

function rowsOf(argument: WrittenArgument): number {
  const ranges = argument.kind === 'reference' ? [argument.address] : (argument.text.replace(QUOTED, '').match(RANGE) ?? []);
  return Math.max(1, ...ranges.map(range => blockOf(range)?.rows ?? 1));
}

function columnsOf(before: string, behind: string, width: number): { columns: number[]; isOneRow: boolean } | undefined {
  if (/^=\s*@?\s*$/.test(before) && behind.trim() === '')
    return { columns: Array.from({ length: width }, (_, i) => i + 1), isOneRow: false };
  const chosen = CHOSEN.test(before) ? CHOSEN_COLUMNS.exec(behind)?.[1] : undefined;
  if (chosen) return { columns: chosen.split(',').slice(1).map(Number), isOneRow: false };
  const picked = PICKED.test(before) ? PICKED_COLUMN.exec(behind) : null;
  return picked ? { columns: [Number(picked[2])], isOneRow: picked[1] === '1' } : undefined;
}

/** A column that is rounded down where it holds numbers: `IFERROR(ROUNDDOWN(column,0),column)`. */
const ROUNDED = /^(=\s*@?\s*IFERROR\(\s*ROUNDDOWN\()(.+),\s*(\d+)\s*\)\s*,\s*\2\)\s*$/is;

/**
 * How far a formula fills cells with the result of one row-wise function: the call itself, columns chosen from it (`CHOOSECOLS(call,1,4)`)
 * or one column of it (`INDEX(call,0,4)`), which may be rounded down.
 * @param formula as the host gives it
 * @returns undefined where the formula is something else
 */
export function spilledResult(formula: string): SpilledResult | undefined {
  const [, before, column, decimals] = ROUNDED.exec(formula) ?? [];
  if (before === undefined || column === undefined) return resultOf(formula);
  const found = resultOf(`=${column}`);
  if (!found) return undefined;
  const { call } = found;
  const [from, to] = [call.from, call.to].map(at => at + before.length - 1) as [number, number];
  return { ...found, call: { ...call, from, to, isWhole: false }, roundedTo: Number(decimals) };
}

function resultOf(formula: string): SpilledResult | undefined {
  const [call, ...others] = functionCalls(formula);
  const width = call && RESULT_COLUMNS[call.id];
  if (!call || !width || others.length > 0) return undefined;
  const found = columnsOf(formula.slice(0, call.from), formula.slice(call.to), width);
  if (!found || found.columns.some(column => column < 1 || column > width)) return undefined;
  return { call, columns: found.columns, rows: found.isOneRow ? 1 : Math.max(1, ...call.arguments.map(rowsOf)) };
}
