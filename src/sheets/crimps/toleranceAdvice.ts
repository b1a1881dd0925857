import { plainHeading } from '../table/heading';
import type { CrimpField } from './crimpRoles';

/** `Tolerance range`: ± or the whole width. */
const RANGE = /\b(?:tolerance|tol\.?),? range\b|\brange of tolerance\b/;

/** What to do about headings that speak of a tolerance which is not read; undefined where none does. */
export function toleranceAdvice(headings: readonly string[]): string | undefined {
  const range = headings.find(heading => RANGE.test(plainHeading(heading)));
  if (range !== undefined)
    return `“${range}” may mean ± or the whole width: choose which under “Columns read”, or head it “Tolerance ±” or “Tolerance width”`;
  return undefined;
}

const EITHER_WAY = /±|\+ ?\/? ?-/;

/** What to do about a cell that does not say what its heading does; undefined where it may be a number. */
export function cellAdvice(field: CrimpField, cell: string): string | undefined {
  if (field === 'toleranceWidth' && EITHER_WAY.test(cell))
    return 'the heading says the whole width, the cell says ±: write the width, or head the column “Tolerance ±”';
  return undefined;
}
