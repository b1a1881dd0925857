import type { CapabilityIndex } from '../../core/quality/capability';
import { normalCdf } from '../../core/quality/normalCdf';
import { TradeError } from '../../core/tradeError';
import type { CombinationReadings, MachineReadings } from './analyseReadings';
import type { AllCapability } from './capabilityOf';
import { controlCharts } from './controlChart';
import { indexText } from './diameterText';
import type { JudgedCrimp } from './judgedCrimp';

/** A row of the table of capability: what it is, and the index. */
export type CapabilityRow = readonly [label: string, index: CapabilityIndex];

/** The three numbers that are true of all combinations together. */
export function allRows({ cp, ppk, worst }: AllCapability): readonly CapabilityRow[] {
  return [
    ['Cp, if every setting were right', cp],
    ['Ppk, with the settings as they are', ppk],
    ...(worst ? [[`Cpk of the worst combination, ${worst.name}`, worst.cpk] as const] : []),
  ];
}

/** `3 of 1000`, as it would be said in the shop. */
function outOfThousand(share: number): string {
  const count = Math.round(share * 1000);
  return count < 1 ? 'fewer than 1 crimp of 1000' : count === 1 ? 'about 1 crimp of 1000' : `about ${count} crimps of 1000`;
}

/** Share beyond the limits of a bell curve whose mean is right. */
const beyondBoth = (cp: number) => 2 * normalCdf(-3 * cp);
/** Share beyond the nearer limit and beyond the other, which is as far off as the whole width leaves it. */
const beyondEither = (pp: number, ppk: number) => normalCdf(-3 * ppk) + normalCdf(-3 * (2 * pp - ppk));

/** What the numbers over all combinations mean in the shop. */
export function allCapabilityText({ cp, pp, ppk, worst }: AllCapability): string {
  const [now, right] = [outOfThousand(beyondEither(pp.value!, ppk.value!)), outOfThousand(beyondBoth(cp.value!))];
  const worstText = worst ? ` Worst is ${worst.name}, Cpk ${indexText(worst.cpk.value!)}.` : '';
  return `With the settings as they are, ${now} would come out too large or too small; with every setting right it would be ${right}.${worstText}`;
}

/** What the numbers of one combination mean in the shop. */
export function oneCapabilityText(name: string, indices: readonly CapabilityIndex[]): string {
  const value = (index: CapabilityIndex['index']) => indices.find(each => each.index === index)?.value;
  const [cp, pp, ppk] = [value('Cp'), value('Pp'), value('Ppk')];
  if (cp === undefined || pp === undefined || ppk === undefined) return '';
  return `${name}: ${outOfThousand(beyondEither(pp, ppk))} would come out too large or too small; with its mean right on target it would be ${outOfThousand(beyondBoth(cp))}.`;
}

/** Rules that say that a process did not run evenly: a point beyond the limits, eight on one side. */
const UNSTABLE = [1, 4];

function signalCount(crimps: readonly JudgedCrimp[]): number {
  try {
    const [chart] = controlCharts(crimps, 'each').charts;
    return chart!.points.filter(({ rules }) => rules.some(rule => UNSTABLE.includes(rule))).length;
  } catch (error) {
    if (error instanceof TradeError) return 0;
    throw error;
  }
}

/** Why capability is not to be relied on: the process was not stable, or a cause was found; undefined where it may. */
export function capabilityWarning(machine: MachineReadings, only: CombinationReadings | undefined): string | undefined {
  const { cause, counts } = machine;
  const signals = signalCount(only ? only.counted : counts.present);
  const hasCause = only
    ? cause.off.some(each => each !== 'SETTING') || only.cause.finding === 'OWN SETTING' || cause.mixed !== undefined
    : cause.off.length > 0 || cause.mixed !== undefined;
  const reasons = [
    ...(signals > 0
      ? [
          `the crimps did not run evenly (${signals} ${signals === 1 ? 'point' : 'points'} beyond the limits or eight in a row on one side)`,
        ]
      : []),
    ...(cause.changes.length > 0 ? ['the machine changed in between'] : []),
    ...(hasCause ? ['a cause was found: put that right first'] : []),
  ];
  return reasons.length === 0 ? undefined : `These numbers say little about the future: ${reasons.join('; ')}.`;
}
