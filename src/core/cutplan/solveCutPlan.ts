import { min } from '../arithmetic';
import type { CutPlan, CutPlanProblem } from './cutPlan';
import { isShortByDivision } from './division';
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
/** Where no plan is found, so much of the work goes into finding what is missing: this share, and no more seconds than these. */
const SHORTAGE_SHARE = 0.3;
const SHORTAGE_SECONDS = 1;
/** The safety stop comes after this share of the seconds: writing the plan and checking it take their time, too. */
const SEARCH_SHARE = 0.95;
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
 * Whether the stock can suffice at all is told by a division before any search.
 * @returns the plan; `isProven` only where an exact bound equals its loss
 * @throws TradeError `impossible` where the stock is not enough (says which lengths are short) or a piece is longer than every stock
 * @example await solveCutPlan({ pieces: [{ length: new Decimal(1250), quantity: 3 }], stock: [{ length: new Decimal(6000) }], kerf: new Decimal(3), unit: 'mm' })
 */
export async function solveCutPlan(problem: CutPlanProblem, watch: CutPlanWatch = {}): Promise<CutPlan> {
  const started = clock();
  const gridded = toGrid(problem);
  const { grid, sheet, perUnit } = gridded;
  const seconds = problem.seconds ?? DEFAULT_SECONDS;
  let shown = '';
  const show = ({ best, bound }: GridState) => {
    if (!watch.onProgress || shown === `${best?.loss}:${bound}`) return;
    shown = `${best?.loss}:${bound}`;
    watch.onProgress(best && best.loss / perUnit, bound / perUnit);
  };
  const isAnyWanted = problem.wanted === 'any';
  const forShortage = isAnyWanted ? 0 : min(seconds * SHORTAGE_SHARE, SHORTAGE_SECONDS);
  const workUntil = (share: number, last: number) =>
    new Work(share * STEPS_PER_SECOND, () => watch.signal?.aborted === true || clock() >= started + last * SEARCH_SHARE * 1000);
  let state: GridState | undefined;
  if (!isShortByDivision(grid)) {
    const work = workUntil(seconds, seconds);
    const first = seconds - forShortage;
    const isHopeless = ({ best }: GridState) =>
      !best && (work.spent >= first * STEPS_PER_SECOND || clock() >= started + first * SEARCH_SHARE * 1000);
    state = await finished(solveGrid(grid, sheet, work), work, step => {
      show(step);
      if (isHopeless(step) || (isAnyWanted && step.best)) work.stopped = true;
    });
  }
  if (!state?.best) {
    const work = workUntil(forShortage, seconds);
    const shortage = await finished(findShortage(gridded, work), work);
    throw shortageError(problem, gridded, shortage, state?.isImpossible ?? true);
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
  onStep?: (step: Step) => void,
): Promise<Result> {
  let next = clock() + SLICE;
  let step = search.next();
  for (; !step.done; step = search.next()) {
    onStep?.(step.value);
    work.look();
    if (clock() >= next) {
      await breathe();
      next = clock() + SLICE;
    }
  }
  return step.value;
}
