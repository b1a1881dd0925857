import { Decimal } from '../units/decimal';
import type { CutPlan, CutPlanProblem, CutPlanRow } from './cutPlan';
import type { GridPlan, Pattern } from './gridProblem';
import type { Gridded } from './toGrid';

interface Sized extends CutPlanRow {
  readonly before: Decimal;
}

/** Hands out the user's lengths behind the widths, longest first. */
function lengthsOf(gridded: Gridded): (pattern: Pattern) => { length: Decimal; count: number }[] {
  const left = gridded.pieces.map(group => group.map(piece => ({ ...piece })));
  return pattern =>
    pattern.items.flatMap((item, k) => {
      const taken: { length: Decimal; count: number }[] = [];
      let wanted = pattern.counts[k]!;
      for (const piece of left[item]!) {
        const count = Math.min(wanted, piece.quantity);
        if (count > 0) taken.push({ length: piece.length, count });
        piece.quantity -= count;
        wanted -= count;
      }
      return taken;
    });
}

function compareCuts(a: CutPlanRow, b: CutPlanRow): number {
  for (let k = 0; k < Math.max(a.cuts.length, b.cuts.length); k++) {
    const [one, other] = [a.cuts[k], b.cuts[k]];
    if (!one || !other) return one ? -1 : 1;
    const difference = other.length.cmp(one.length) || other.count - one.count;
    if (difference !== 0) return difference;
  }
  return 0;
}

/** The user's rows: equal ones joined, longest stock first, longest cuts first. */
function rowsOf(problem: CutPlanProblem, gridded: Gridded, plan: GridPlan): Sized[] {
  const { perUnit, grid, stock, pieces } = gridded;
  const kerf = problem.kerf.times(perUnit).ceil();
  const cutsOf = lengthsOf(gridded);
  const rows = new Map<string, Sized>();
  const ordered = [...plan.uses].sort((a, b) => a.pattern.stock - b.pattern.stock);
  for (const { pattern, times } of ordered) {
    const room = new Decimal(grid.stock[pattern.stock]!.capacity).minus(kerf);
    const left = Decimal.max(0, room.minus(pattern.width));
    const isShared = pattern.items.some(item => pieces[item]!.length > 1);
    for (let copy = 0; copy < times; copy += isShared ? 1 : times) {
      const cuts = cutsOf({ ...pattern, counts: pattern.counts });
      const key = `${pattern.stock}:${cuts.map(cut => `${cut.count}x${cut.length}`).join()}`;
      const known = rows.get(key);
      const row = {
        stock: stock[pattern.stock]!,
        before: stock[pattern.stock]!.times(perUnit).floor().div(perUnit),
        times: (known?.times ?? 0) + (isShared ? 1 : times),
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
  const least = new Decimal(Math.min(bound, plan.loss)).div(gridded.perUnit);
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
