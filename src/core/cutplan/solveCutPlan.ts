import type { CutPlan, CutPlanProblem } from './cutPlan';
import { fromGrid } from './fromGrid';
import { findShortage, shortageError } from './shortage';
import { solveGrid, type GridState } from './solveGrid';
import { toGrid } from './toGrid';
import { faultOf } from './verifyCutPlan';
import { Work } from './work';

/** Ways to watch and to end a search. */
export interface CutPlanWatch {
  /** Called with the loss of the best plan so far (undefined before there is one) and the bound, when either gets better. */
  readonly onProgress?: ((best: number | undefined, bound: number) => void) | undefined;
  /** Ends the search; the best plan so far is still returned. */
  readonly signal?: { readonly aborted: boolean } | undefined;
}

const STEPS_PER_SECOND = 320_000;
const DEFAULT_SECONDS = 3;
/** Where the stock is not enough, so much work goes into finding what is missing. */
const SHORTAGE_SECONDS = 1;
/** The search hands control back this often (milliseconds), so that a page stays alive and can cancel. */
const SLICE = 30;

const clock = (): number => (typeof performance === 'undefined' ? Date.now() : performance.now());

/** Lets other events happen, where the host can; a bare script host cannot. */
function breathe(): Promise<void> | undefined {
  if (typeof MessageChannel === 'function') {
    // Unlike a timer, a message is not held back while the page is in the background.
    return new Promise(resolve => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        port1.close();
        resolve();
      };
      port2.postMessage(undefined);
    });
  }
  return typeof setTimeout === 'function' ? new Promise(resolve => setTimeout(resolve, 0)) : undefined;
}

/**
 * The cutting plan that loses least, checked by the independent verifier before it is returned.
 * The search is deterministic: it ends with a proof or after an amount of work that `seconds` sets; the clock only stops it for safety.
 * @returns the plan; `isProven` only where an exact bound equals its loss
 * @throws TradeError `impossible` where the stock is not enough (says which lengths are short) or a piece is longer than every stock
 * @example await solveCutPlan({ pieces: [{ length: new Decimal(1250), quantity: 3 }], stock: [{ length: new Decimal(6000) }], kerf: new Decimal(3), unit: 'mm' })
 */
export async function solveCutPlan(problem: CutPlanProblem, watch: CutPlanWatch = {}): Promise<CutPlan> {
  const gridded = toGrid(problem);
  const { grid, sheet, perUnit } = gridded;
  const seconds = problem.seconds ?? DEFAULT_SECONDS;
  let shown = '';
  const show = ({ best, bound }: GridState) => {
    if (!watch.onProgress || shown === `${best?.loss}:${bound}`) return;
    shown = `${best?.loss}:${bound}`;
    watch.onProgress(best && best.loss / perUnit, bound / perUnit);
  };
  const work = new Work(seconds * STEPS_PER_SECOND);
  const state = await finished(solveGrid(grid, sheet, work), work, seconds, watch, show);
  if (!state.best) {
    const extra = Math.min(seconds, SHORTAGE_SECONDS);
    const more = new Work(extra * STEPS_PER_SECOND);
    const shortage = await finished(findShortage(gridded, more), more, extra, watch);
    throw shortageError(problem, gridded, shortage, state.isImpossible);
  }
  const plan = fromGrid(problem, gridded, state.best, state.bound);
  const fault = faultOf(problem, plan);
  if (fault) throw new Error(`The cutting plan failed its check: ${fault}.`);
  return plan;
}

/** Runs a search to its end, in slices; the clock and the signal stop its work. */
async function finished<Step, Result>(
  search: Generator<Step, Result>,
  work: Work,
  seconds: number,
  watch: CutPlanWatch,
  onStep?: (step: Step) => void,
): Promise<Result> {
  const end = clock() + seconds * 1000;
  let next = clock() + SLICE;
  let step = search.next();
  for (; !step.done; step = search.next()) {
    onStep?.(step.value);
    const now = clock();
    if (now >= end || watch.signal?.aborted) work.stopped = true;
    if (now >= next) {
      await breathe();
      next = clock() + SLICE;
    }
  }
  return step.value;
}
