import type { Decimal } from '../units/decimal';
import type { CutPlan, CutPlanProblem } from './cutPlan';

/** What is wrong with a plan, in one sentence; undefined where everything holds. It shares no code with the solver. */
export function faultOf(problem: CutPlanProblem, plan: CutPlan): string | undefined {
  const steps = problem.unit === 'mm' ? 10 : 64;
  const up = (x: Decimal | undefined) => BigInt(x ? x.times(steps).ceil().toFixed(0) : '0');
  const down = (x: Decimal) => BigInt(x.times(steps).floor().toFixed(0));
  const exact = (x: Decimal) => x.times(steps).toFixed();
  const kerf = up(problem.kerf);
  const squaring = up(problem.squaring);
  const keep = problem.keep && up(problem.keep);
  const handling = up(problem.handling);
  const worth = (x: bigint) => (keep === undefined || x <= keep ? 0n : x - keep);

  const wanted = new Map<string, number>();
  for (const piece of problem.pieces) {
    wanted.set(piece.length.toString(), (wanted.get(piece.length.toString()) ?? 0) + piece.quantity);
  }
  const rack = new Map<string, number>();
  for (const one of problem.stock) {
    rack.set(one.length.toString(), (rack.get(one.length.toString()) ?? 0) + (one.quantity ?? Infinity));
  }
  const totals = { used: 0n, left: 0n, loss: 0n, cut: 0n, stock: 0 };

  for (const row of plan.rows) {
    const name = `stock ${row.stock}`;
    if (!Number.isInteger(row.times) || row.times < 1) return `${name} is cut ${row.times} times`;
    rack.set(row.stock.toString(), (rack.get(row.stock.toString()) ?? 0) - row.times);
    const length = down(row.stock);
    let pieces = 0n;
    let count = 0n;
    for (const cut of row.cuts) {
      if (!Number.isInteger(cut.count) || cut.count < 1) return `${name} has ${cut.count} x ${cut.length}`;
      wanted.set(cut.length.toString(), (wanted.get(cut.length.toString()) ?? 0) - cut.count * row.times);
      pieces += up(cut.length) * BigInt(cut.count);
      count += BigInt(cut.count);
    }
    if (count === 0n) return `${name} is opened for nothing`;
    if (pieces + (count - 1n) * kerf > length - squaring) return `${name} is too short for its cuts`;
    const rest = length - squaring - pieces - count * kerf;
    const left = rest > 0n ? rest : 0n;
    if (exact(row.left) !== left.toString()) return `${name} leaves ${left} steps, not ${exact(row.left)}`;
    const used = length - squaring - left;
    if (exact(row.used) !== used.toString()) return `${name} uses ${used} steps, not ${exact(row.used)}`;
    const times = BigInt(row.times);
    totals.used += used * times;
    totals.left += left * times;
    totals.loss += times * (handling + (keep === undefined ? length : worth(length) - worth(left)));
    totals.cut += length * times;
    totals.stock += row.times;
  }
  for (const [length, missing] of wanted) if (missing !== 0) return `${missing} x ${length} not cut`;
  for (const [length, rest] of rack) if (rest < 0) return `${-rest} x stock ${length} too many`;
  if (plan.stockCut !== totals.stock) return `${totals.stock} pieces of stock, not ${plan.stockCut}`;
  if (exact(plan.used) !== totals.used.toString() || exact(plan.left) !== totals.left.toString()) return 'totals do not add up';
  if (exact(plan.loss) !== totals.loss.toString()) return `the loss is ${totals.loss} steps, not ${exact(plan.loss)}`;
  const gap = plan.loss.minus(plan.bound);
  if (gap.lt(0) || plan.isProven !== gap.isZero()) return 'the bound does not fit the claim';
  const percent = gap.times(steps).div(totals.cut.toString()).times(100);
  if (percent.gt(plan.percentOver) || percent.lt(plan.percentOver - 0.01)) return 'the share over the best is wrong';
  return undefined;
}
