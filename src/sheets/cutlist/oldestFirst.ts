import type { CutPlanProblem } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import { Decimal } from '../../core/units/decimal';
import type { CutLine } from '../jobs/cutLine';
import { canCut } from './canCut';
import type { CutSettings } from './cutSettings';
import { firstFit, onePerPiece } from './firstFit';
import type { PlanSolver } from './planSolver';
import type { RackRow } from '../rack/rackRow';

/** Oldest first; what has no date comes last; equal dates stay in rack order. */
export function byAge(rack: readonly RackRow[]): readonly RackRow[] {
  const key = (row: RackRow) => row.made || '9999';
  return [...rack].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/** Enough hose by length alone, in these pieces of the rack. */
function isLongEnough({ pieces, kerf, squaring }: CutPlanProblem, stock: readonly RackRow[]): boolean {
  const wanted = pieces.reduce((sum, piece) => sum.plus(piece.length.plus(kerf).times(piece.quantity)), new Decimal(0));
  const room = (row: RackRow) => Decimal.max(0, row.length.minus(squaring ?? 0).plus(kerf));
  return stock.reduce((sum, row) => sum.plus(room(row)), new Decimal(0)).gte(wanted);
}

/** Least number from `low` to `high` for which the answer is yes; it is known to be for `high`, and stays so once it is. */
async function firstWhere(low: number, high: number, isYes: (number: number) => boolean | Promise<boolean>): Promise<number> {
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (await isYes(middle)) high = middle;
    else low = middle + 1;
  }
  return high;
}

/**
 * The oldest pieces of stock that just serve: no younger one is taken where the solver can cut everything without it.
 * The plan is then made from these alone. All of the rack where even that is not enough.
 */
export async function oldestThatServe(
  { lines, rack, problem }: { lines: readonly CutLine[]; rack: readonly RackRow[]; problem: CutPlanProblem },
  settings: CutSettings,
  solve: PlanSolver,
  watch?: CutPlanWatch,
): Promise<readonly RackRow[]> {
  const pieces = [...onePerPiece(lines)].sort((a, b) => b.cutLength.cmp(a.cutLength));
  const single = byAge(rack).flatMap(row => Array.from({ length: Math.min(row.quantity, pieces.length) }, () => row));
  const first = (count: number) => single.slice(0, count);
  if (!isLongEnough(problem, single)) return byAge(rack);
  const least = await firstWhere(1, single.length, count => isLongEnough(problem, first(count)));
  const fits = (count: number) => firstFit(pieces, first(count).map(one), settings).missing.length === 0;
  const most = fits(single.length) ? await firstWhere(least, single.length, fits) : single.length;
  const serve = async (count: number) => {
    // Once cancelled, no more is asked: halving then ends at what is known to serve.
    if (watch?.signal?.aborted) return false;
    const stock = joined(first(count)).map(({ length, quantity }) => ({ length, quantity }));
    return 'rows' in (await canCut({ ...problem, stock }, solve, { signal: watch?.signal }));
  };
  return joined(first(await firstWhere(least, most, serve)));
}

const one = (row: RackRow): RackRow => ({ ...row, quantity: 1 });

function joined(rows: readonly RackRow[]): RackRow[] {
  const counts = new Map<RackRow, number>();
  for (const row of rows) counts.set(row, (counts.get(row) ?? 0) + 1);
  return [...counts].map(([row, quantity]) => ({ ...row, quantity }));
}
