import { measureCrimp, type CrimpMeasure } from '../../core/crimp/crimpMeasure';
import { judgeCrimp, type CrimpVerdict } from '../../core/crimp/crimpVerdict';
import { nextDial } from '../../core/crimp/nextDial';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { CrimpRow } from './crimpRow';

/** What the dial is to be for the next crimp. */
export type NextSetting =
  | { readonly kind: 'same'; readonly dial: Decimal }
  | { readonly kind: 'move'; readonly from: Decimal; readonly to: Decimal }
  | { readonly kind: 'none'; readonly sentence: string };

/** A measured crimp, judged. */
export interface Judgement {
  readonly measure: CrimpMeasure;
  readonly verdict: CrimpVerdict;
  readonly next: NextSetting;
}

/** What each verdict means at the bench. */
export const MEANINGS: Readonly<Record<CrimpVerdict, string>> = {
  'IN SPEC': 'The mean lies within its limits.',
  TIGHT: 'Crimped too small: rejected.',
  LOOSE: 'Crimped too large: rejected.',
  UNSURE: 'Too near to a limit for this caliper: measure better before you decide.',
  OVAL: 'The mean fits, but the readings differ too much: rejected.',
};

const wantsNoMove = (verdict: CrimpVerdict) => verdict === 'IN SPEC' || verdict === 'OVAL';

function nextOf(row: CrimpRow, measure: CrimpMeasure, verdict: CrimpVerdict): NextSetting {
  const { dial, step, lowest, highest, largestMove, tolerance } = row;
  if (!dial) return { kind: 'none', sentence: 'Next dial unknown: neither this row nor the catalogue has a dial.' };
  if (verdict === 'OVAL')
    return { kind: 'none', sentence: 'The dial cannot make a crimp round: check dies, ferrule and hose first.' };
  if (wantsNoMove(verdict)) return { kind: 'same', dial: dial.value };
  if (!step || step.value.isZero()) {
    const sentence =
      'Next dial unknown: the step (change of diameter per digit) is missing. Give it in a column Step, in Machines, or under Limits and machine.';
    return { kind: 'none', sentence };
  }
  try {
    const to = nextDial(measure, tolerance!.value, {
      dial: dial.value,
      step: step.value,
      lowest: lowest?.value,
      highest: highest?.value,
      largestMove: largestMove?.value,
    });
    return to.eq(dial.value) ? { kind: 'same', dial: to } : { kind: 'move', from: dial.value, to };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { kind: 'none', sentence: `No next dial: ${error.message}.` };
  }
}

/**
 * Verdict and next dial of a crimp's readings.
 * @param row one without a problem
 * @param uncertainty expanded uncertainty (k = 2) of the mean, where the user gives one
 */
export function judgeCrimpRow(row: CrimpRow, readings: readonly Decimal[], uncertainty?: Decimal): Judgement {
  const [target, tolerance] = [row.target!.value, row.tolerance!.value];
  const measure = measureCrimp({ readings, target, tolerance });
  const verdict = judgeCrimp(measure, { tolerance, uncertainty, maxSpread: row.largestSpread?.value });
  return { measure, verdict, next: nextOf(row, measure, verdict) };
}

/** True where the crimp must not be used. */
export function isRejected(verdict: CrimpVerdict): boolean {
  return verdict === 'TIGHT' || verdict === 'LOOSE' || verdict === 'OVAL';
}

/** The next dial in a sentence. */
export function nextText(next: NextSetting, verdict: CrimpVerdict): string {
  if (next.kind === 'none') return next.sentence;
  if (next.kind === 'same') return `Dial ${next.dial}: leave it.`;
  const digits = next.to.minus(next.from);
  const move = `${digits.abs()} ${digits.isNegative() ? 'down' : 'up'}`;
  const stays = isRejected(verdict) ? '; this crimp stays rejected' : '';
  return `Next dial ${next.to} (was ${next.from}, ${move}). It is for the next crimp${stays}. Try it on one trial piece first.`;
}
