import { Decimal } from '../../core/units/decimal';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { asShown, roundedText, withUnit } from './dutyUnits';

/** How a demand is met. `not known` rules a hose out, `unsure` is only told. */
export type MarginState = 'met' | 'missed' | 'not known' | 'unsure' | 'not asked';

/** One demand against what a part has, in words. */
export interface Margin {
  readonly demand: string;
  readonly state: MarginState;
  /** What is asked and what there is: `needs 200 bar, rated 262 bar`. */
  readonly facts: string;
  /** What is to spare or lacking: `62 bar to spare (31 %)`, `not known`. */
  readonly verdict: string;
  /** By which share it is missed; undefined where nothing can be measured. */
  readonly missedBy?: number | undefined;
}

export const notAsked = (demand: string, facts = ''): Margin => ({
  demand,
  state: 'not asked',
  facts,
  verdict: 'not asked',
});

export const notKnown = (demand: string, facts: string): Margin => ({ demand, state: 'not known', facts, verdict: 'not known' });

const PERCENT = 100;
const USUAL_WORDS = ['needs', 'has', 'too little'] as const;
/** Words of a rating. */
export const RATED = ['needs', 'rated', 'too little'] as const;

interface MarginWords {
  /** Less is better: the demand is what there may be at most. */
  readonly atMost: boolean;
  /** True where a share of the demand says something. */
  readonly percent: boolean;
  /** What a miss is measured by, where that is not the demand itself. */
  readonly scale: Decimal | undefined;
  /** Behind what there is. */
  readonly note: string;
  /** Before what is asked, before what there is, behind what is lacking. */
  readonly words: readonly [ask: string, have: string, lack: string];
}

/** What is to spare or lacking, so that it is the difference of the two numbers beside it; exact where they are too near for that. */
export function shownGap(wanted: Decimal, has: Decimal, exact: Decimal, unit: MeasureUnit): string {
  const gap = wanted.minus(has).abs();
  const isTooNear = gap.isZero() || exact.abs().lt(gap.div(2));
  return withUnit(isTooNear ? exact.abs() : gap, unit);
}

/**
 * A demand on a number: at least that much is wanted of what there is, or, with `atMost`, no more. What is asked is
 * shown rounded towards more, what there is towards less.
 * @param has undefined = not stated
 */
export function numberMargin(
  demand: string,
  wanted: Decimal,
  has: Decimal | undefined,
  unit: MeasureUnit,
  { atMost = false, percent = false, scale, note = '', words = USUAL_WORDS }: Partial<MarginWords> = {},
): Margin {
  const [ask, have, lack] = words;
  const [up, down] = atMost
    ? ([Decimal.ROUND_FLOOR, Decimal.ROUND_CEIL] as const)
    : ([Decimal.ROUND_CEIL, Decimal.ROUND_FLOOR] as const);
  const shownWanted = asShown(wanted, unit, up);
  const asked = `${ask} ${withUnit(shownWanted, unit)}`;
  if (has === undefined) return notKnown(demand, `${asked}, the catalogue does not say`);
  const shownHas = asShown(has, unit, down);
  const spare = atMost ? wanted.minus(has) : has.minus(wanted);
  const facts = `${asked}, ${have} ${withUnit(shownHas, unit)}${note}`;
  const share =
    percent && wanted.gt(0) && !spare.isZero() ? ` (${roundedText(spare.abs().times(PERCENT).div(wanted), 0)} %)` : '';
  const gap = shownGap(shownWanted, shownHas, spare, unit);
  if (spare.lt(0)) {
    const missedBy = spare
      .abs()
      .div(scale ?? wanted)
      .abs()
      .toNumber();
    return { demand, state: 'missed', facts, verdict: `${gap} ${lack}${share}`, missedBy };
  }
  return { demand, state: 'met', facts, verdict: `${gap} to spare${share}` };
}

/** True where a margin rules a part out. */
export const rulesOut = ({ state }: Margin): boolean => state === 'missed' || state === 'not known';

/** A margin as a reason: `Bore: needs 12 mm, has 9.5 mm, 2.5 mm too little (21 %)`. */
export function reasonText({ demand, facts, verdict, state }: Margin): string {
  return `${demand}: ${facts}${state === 'not known' ? '' : `, ${verdict}`}`;
}
