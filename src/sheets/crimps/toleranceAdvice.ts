import { plainHeading, statedUnit } from '../table/heading';
import type { CrimpField } from './crimpRoles';

/** `Tolerance range`: ± or the whole width. */
const RANGE = /\b(?:tolerance|tol\.?),? range\b|\brange of tolerance\b/;

/** `Tol +` beside `Tol −`, `Upper tolerance`: one for each way. */
const ONE_WAY =
  /^(?:tolerance|tol\.?) ?(?:[+\-−–]|plus|minus|upper|lower|pos\.?|neg\.?)$|^(?:[+\-−–]|plus|minus|upper|lower) ?(?:tolerance|tol\.?)$/;
const TWO_LIMITS = 'use two columns of limits instead, the smallest and the largest diameter';

/** What to do about headings that speak of a tolerance which is not read; undefined where none does. */
export function toleranceAdvice(headings: readonly string[]): string | undefined {
  const range = headings.find(heading => RANGE.test(plainHeading(heading)));
  if (range !== undefined)
    return `“${range}” may mean ± or the whole width: choose which under “Columns read”, or head it “Tolerance ±” or “Tolerance width”`;
  const oneWay = headings.filter(
    heading => ONE_WAY.test(plainHeading(heading)) || ONE_WAY.test(statedUnit(heading, 'length').words),
  );
  if (oneWay.length === 0) return undefined;
  return `${oneWay.map(heading => `“${heading}”`).join(' and ')}, one for each way, cannot be used: ${TWO_LIMITS}`;
}

/** `+0.10/-0.20`, `+0.1 -0.2`. */
const TWO_WAYS = /^\s*[+\-−–]\s*[\d.,]+\s*(?:\p{L}+\s*)?[/;,]?\s*[+\-−–]\s*[\d.,]+/u;
/** `18.6 ± 0.15`. */
const BOTH = /^\s*\d[\d.,]*\s*(?:\p{L}+\s*|["″”])?(?:±|\+\s*\/?\s*-)\s*[\d.,]+/u;
const EITHER_WAY = /±|\+ ?\/? ?-/;

/** What to do about a cell that does not say what its heading does; undefined where it may be a number. */
export function cellAdvice(field: CrimpField, cell: string): string | undefined {
  if (field === 'toleranceWidth' && EITHER_WAY.test(cell))
    return 'the heading says the whole width, the cell says ±: write the width, or head the column “Tolerance ±”';
  if (TWO_WAYS.test(cell)) return `one for each way cannot be used: ${TWO_LIMITS}`;
  if (BOTH.test(cell)) return 'write it in two columns, one of the target, one of the tolerance ±';
  return undefined;
}
