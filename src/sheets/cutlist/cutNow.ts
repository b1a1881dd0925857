import type { CutPlan } from '../../core/cutplan/cutPlan';
import type { CutPlanWatch } from '../../core/cutplan/solveCutPlan';
import type { CutLine } from '../jobs/cutLine';
import { canCut } from './canCut';
import type { CutSettings } from './cutSettings';
import { firstFit, onePerPiece } from './firstFit';
import { withRack, type HoseJob } from './hoseJob';
import { plannedReels } from './plannedReel';
import { bestPlan } from './bestPlan';
import type { PlanSolver } from './planSolver';

/** What the stock is enough for, and what it is not. */
export interface CutNow {
  /** The lines that can be cut, with the number of pieces that can. */
  readonly lines: readonly CutLine[];
  /** The lines that lack pieces, with the number that they lack. */
  readonly later: readonly CutLine[];
}

/** The plan whose rests are filled with what comes later is searched for so many seconds. */
const SECONDS = 0.5;

/** The lines with only so many pieces each; those without any fall away. */
function withQuantities(lines: readonly CutLine[], pieces: readonly CutLine[]): readonly CutLine[] {
  const counts = new Map<CutLine, number>();
  for (const line of pieces) counts.set(line, (counts.get(line) ?? 0) + 1);
  return lines.flatMap(line => {
    const quantity = counts.get(line) ?? 0;
    return quantity > 0 ? [{ ...line, quantity, ordered: line.ordered ?? line.quantity }] : [];
  });
}

/**
 * The pieces that can be cut from a rack that is too short for all: as many of the first ones, in the order of the sheet, as a plan is
 * found for, then those of the later ones that still fit on what that plan leaves. Once cancelled, no more is asked: what fits in the order
 * of the sheet is cut.
 */
export async function cutNow(job: HoseJob, settings: CutSettings, solve: PlanSolver, watch?: CutPlanWatch): Promise<CutNow> {
  const pieces = onePerPiece(job.lines);
  const firstOf = (count: number) =>
    withRack({ ...job, lines: withQuantities(job.lines, pieces.slice(0, count)) }, job.rack, settings);
  let enough = 0;
  let tooMany = pieces.length;
  let plan: CutPlan | undefined;
  while (tooMany - enough > 1 && !watch?.signal?.aborted) {
    const middle = Math.floor((enough + tooMany) / 2);
    const found = await canCut(firstOf(middle).problem, solve, { signal: watch?.signal });
    if ('rows' in found) [enough, plan] = [middle, found];
    else tooMany = middle;
  }
  const first = firstOf(enough);
  if (plan && !plan.isProven) plan = await bestPlan({ ...first.problem, seconds: SECONDS }, plan, solve, watch);
  const reels = plan ? plannedReels(first, plan, settings) : [];
  const rest = pieces.slice(enough);
  const taken = (row: number) => reels.filter(reel => reel.rack.row === row).length;
  const left = [
    // What is left of a reel that is cut into is squared off already.
    ...reels.map(reel => ({ ...reel.rack, length: reel.left.plus(reel.squaring) })),
    ...job.rack.map(row => ({ ...row, quantity: row.quantity - taken(row.row) })),
  ];
  const { missing } = firstFit(rest, left, settings);
  const waiting = [...missing];
  const fitting = rest.filter(line => {
    const at = waiting.indexOf(line);
    if (at >= 0) waiting.splice(at, 1);
    return at < 0;
  });
  return {
    lines: withQuantities(job.lines, [...pieces.slice(0, enough), ...fitting]),
    later: withQuantities(job.lines, missing),
  };
}
