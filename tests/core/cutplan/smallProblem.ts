import type { CutPlanProblem } from '../../../src/core/cutplan/cutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import type { SmallCase } from './bruteForce';

const tenths = (steps: number) => new Decimal(steps).div(10);

/** A small case in millimetres, one step of the grid each tenth. */
export function problemOf(small: SmallCase): CutPlanProblem {
  return {
    pieces: small.pieces.map(length => ({ length: tenths(length), quantity: 1 })),
    stock: small.stock.map(({ length, count }) => ({
      length: tenths(length),
      quantity: Number.isFinite(count) ? count : undefined,
    })),
    kerf: tenths(small.kerf),
    squaring: tenths(small.squaring),
    keep: small.keep === undefined ? undefined : tenths(small.keep),
    handling: tenths(small.handling),
    unit: 'mm',
  };
}
