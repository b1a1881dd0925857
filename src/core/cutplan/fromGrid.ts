import { floor, max, min } from '../arithmetic';
import { Decimal } from '../units/decimal';
import type { CutPlan, CutPlanProblem, CutPlanRow } from './cutPlan';
import type { GridPlan, Pattern } from './gridProblem';
import type { Gridded } from './toGrid';

interface Sized extends CutPlanRow {
  readonly before: Decimal;
}

interface Cut {
  readonly length: Decimal;
  readonly count: number;
}

/** Hands out the user's lengths behind the widths, longest first, to as many of `most` copies of a pattern as get the same. */
function lengthsOf(gridded: Gridded): (pattern: Pattern, most: number) => { cuts: Cut[]; copies: number } {
  const left = gridded.pieces.map(group => group.map(piece => ({ ...piece })));
  const take = (item: number, wanted: number): Cut[] => {
    const taken: Cut[] = [];
    for (let missing = wanted; missing > 0;) {
      const piece = left[item]![0]!;
      const count = min(missing, piece.quantity);
      taken.push({ length: piece.length, count });
      piece.quantity -= count;
      missing -= count;
      if (piece.quantity === 0) left[item]!.shift();
    }
    return taken;
  };
  return ({ items, counts }, most) => {
    const alike = items.map((item, k) => floor(left[item]![0]!.quantity / counts[k]!));
    const copies = max(1, min(most, ...alike));
    // Where not even one copy is of one length each, it is handed out alone.
    const cuts = items.flatMap((item, k) => take(item, copies * counts[k]!));
    return { cuts: copies === 1 ? cuts : cuts.map(cut => ({ ...cut, count: cut.count / copies })), copies };
  };
}

function compareCuts(a: CutPlanRow, b: CutPlanRow): number {
  for (let k = 0; k < max(a.cuts.length, b.cuts.length); k++) {
    const [one, other] = [a.cuts[k], b.cuts[k]];
    if (!one || !other) return one ? -1 : 1;
    const difference = other.length.cmp(one.length) || other.count - one.count;
    if (difference !== 0) return difference;
  }
  return 0;
}

/** The user's rows: equal ones joined, longest stock first, longest cuts first. */
function rowsOf(problem: CutPlanProblem, gridded: Gridded, plan: GridPlan): Sized[] {
  const { perUnit, grid, stock } = gridded;
  const kerf = problem.kerf.times(perUnit).ceil();
  const cutsOf = lengthsOf(gridded);
  const rows = new Map<string, Sized>();
  const ordered = [...plan.uses].sort((a, b) => a.pattern.stock - b.pattern.stock);
  for (const { pattern, times } of ordered) {
    const room = new Decimal(grid.stock[pattern.stock]!.capacity).minus(kerf);
    const left = Decimal.max(0, room.minus(pattern.width));
    for (let copy = 0; copy < times;) {
      const { cuts, copies } = cutsOf(pattern, times - copy);
      copy += copies;
      const key = `${pattern.stock}:${cuts.map(cut => `${cut.count}x${cut.length}`).join()}`;
      const known = rows.get(key);
      const row = {
        stock: stock[pattern.stock]!,
        before: stock[pattern.stock]!.times(perUnit).floor().div(perUnit),
        times: (known?.times ?? 0) + copies,
        cuts,
        used: room.minus(left).div(perUnit),
        left: left.div(perUnit),
      };
      rows.set(key, row);
    }
  }
  return [...rows.values()].sort((a, b) => b.stock.cmp(a.stock) || compareCuts(a, b));
}

/** The plan in the user's lengths. */
export function fromGrid(problem: CutPlanProblem, gridded: Gridded, plan: GridPlan, bound: number): CutPlan {
  const rows = rowsOf(problem, gridded, plan);
  const sum = (value: (row: Sized) => Decimal) =>
    rows.reduce((total, row) => total.plus(value(row).times(row.times)), new Decimal(0));
  const loss = new Decimal(plan.loss).div(gridded.perUnit);
  const least = new Decimal(min(bound, plan.loss)).div(gridded.perUnit);
  const isProven = bound >= plan.loss;
  const over = isProven
    ? new Decimal(0)
    : loss
        .minus(least)
        .div(sum(row => row.before))
        .times(100);
  return {
    rows: rows.map(({ stock, times, cuts, used, left }) => ({ stock, times, cuts, used, left })),
    stockCut: rows.reduce((total, row) => total + row.times, 0),
    used: sum(row => row.used),
    left: sum(row => row.left),
    loss,
    bound: least,
    isProven,
    percentOver: over.toDecimalPlaces(2, Decimal.ROUND_UP).toNumber(),
  };
}
