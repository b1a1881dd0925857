import type { Catalogue } from '../../core/catalogue/catalogue';
import { findHose } from '../../core/catalogue/findPart';
import { Decimal } from '../../core/units/decimal';
import { benchCut } from '../jobs/benchRounding';
import type { CutLine } from '../jobs/cutLine';
import type { CutSettings } from '../cutlist/cutSettings';
import { hoseJobs } from '../cutlist/hoseJob';
import type { PlanProgress } from '../cutlist/planHoses';
import { planHose, type HosePlan } from '../cutlist/planHose';
import { lineText } from '../cutlist/planText';
import type { PlanSolver } from '../cutlist/planSolver';
import type { RackRow } from '../rack/rackRow';
import { lengthText } from '../table/lengthText';
import type { HoseNeed } from './purchaseNeeds';

/** How many new reels of a hose a cut plan asks for. */
export interface ReelsWanted {
  /** undefined = not known: what is needed goes by length. */
  readonly reels: number | undefined;
  readonly note: string;
}

/** What planning is done with. */
export interface PlanInput {
  readonly settings: CutSettings;
  /** Stock that is cut first; none = new reels only. */
  readonly rack: readonly RackRow[];
  /** As `2026-10-05`, for the age of the hose. */
  readonly today: string;
}

function cutLines({ hose, cuts }: HoseNeed, { settings }: PlanInput): readonly CutLine[] {
  return cuts.map(({ row, line, length, quantity }) => ({
    row,
    line,
    label: '',
    hose,
    quantity,
    wanted: length,
    cutLength: benchCut(length, settings.step, settings.unit).cutLength,
  }));
}

function wanted(plan: HosePlan, { settings, rack }: PlanInput): ReelsWanted {
  const { tooLong, beyondReel, buy, reelLength, shortage } = plan;
  const from = rack.length > 0 ? 'with the rack' : 'new reels only';
  if (plan.plan && tooLong.length === 0 && shortage === undefined) return { reels: 0, note: 'cut plan: the rack is enough' };
  if (!reelLength) return { reels: undefined, note: 'reel length not known: by length' };
  const reel = `${lengthText(reelLength, settings.unit)} ${settings.unit}`;
  if (beyondReel.length > 0) {
    const lines = beyondReel.map(line => lineText(line, settings.unit)).join('; ');
    return { reels: undefined, note: `longer than a reel of ${reel}: ${lines}; by length` };
  }
  if (!buy) {
    const why = shortage === undefined ? '' : ` (${shortage})`;
    return { reels: undefined, note: `no number of reels of ${reel} was found to be enough: by length${why}` };
  }
  const proof = buy.reels === buy.atLeast ? 'the least that is enough' : `at least ${buy.atLeast} are needed`;
  return { reels: buy.reels, note: `cut plan, ${from}: ${proof}` };
}

/**
 * Plans every hose and says how many new reels of it are needed.
 * @param solve the core's solver
 * @returns one entry a hose, in their order
 */
export async function planReels(
  catalogue: Catalogue,
  hoses: readonly HoseNeed[],
  input: PlanInput,
  solve: PlanSolver,
  onProgress: (progress: PlanProgress) => void,
  signal: { readonly aborted: boolean },
): Promise<readonly ReelsWanted[]> {
  const found: ReelsWanted[] = [];
  for (const [index, need] of hoses.entries()) {
    const at = { hose: need.hose, number: index + 1, of: hoses.length };
    onProgress(at);
    const watch = { signal, onProgress: (best: number | undefined, bound: number) => onProgress({ ...at, best, bound }) };
    const [job] = hoseJobs(cutLines(need, input), input.rack, input.settings, input.today);
    const { reelLength } = findHose(catalogue, need.hose);
    const reel = reelLength ? new Decimal(reelLength) : undefined;
    found.push(wanted(await planHose(job!, input.settings, reel, solve, watch), input));
  }
  return found;
}
