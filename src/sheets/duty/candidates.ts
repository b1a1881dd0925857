import { assembly, type Assembly } from '../../core/catalogue/assembly';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { hoseFit } from '../../core/catalogue/hoseDuty';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { unitCost, type UnitCost } from '../../core/catalogue/unitCost';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { converted, UNITS_OF } from './dutyUnits';
import { endOptions, type EndOption } from './endOptions';
import { velocityMargin } from './flowInHose';
import { hoseDutyOf, hoseMargins } from './hoseMargins';
import { reasonText, rulesOut, type Margin } from './margin';
import type { Demand } from './readDuty';
import { routeLengths, straightRunMargin, type RouteLengths } from './routeLengths';

/** A hose that suits, with the fittings that suit each end, cheapest first. */
export interface Candidate {
  readonly hose: Hose;
  readonly margins: readonly Margin[];
  readonly lengths: RouteLengths;
  readonly ends: readonly [readonly EndOption[], readonly EndOption[]];
  /** With the cheapest fittings. */
  readonly cheapest: Choice;
}

/** A hose with one fitting at each end. */
export interface Choice {
  readonly hose: Hose;
  readonly ends: readonly [EndOption, EndOption];
  readonly lengths: RouteLengths;
  readonly margins: readonly Margin[];
  /** undefined where the length is not known. */
  readonly assembly: Assembly | undefined;
  /** undefined where it is not known, with the reason. */
  readonly cost: UnitCost | undefined;
  readonly costReason: string | undefined;
  /** What forbids it although each part suits; none where it may be made. */
  readonly wrong: readonly string[];
}

/** A hose that does not suit, and why. */
export interface RuledOut {
  readonly hose: Hose;
  /** What rules it out: the hose itself, or its couplings alone. */
  readonly by: 'hose' | 'couplings';
  readonly reasons: readonly string[];
  /** The largest share by which it misses something that is measured. */
  readonly missedBy: number;
  /** 0: only measured things are missed; 1: something is not known; 2: something is refused, like a fluid. */
  readonly kind: 0 | 1 | 2;
}

export interface Candidates {
  readonly suitable: readonly Candidate[];
  readonly ruledOut: readonly RuledOut[];
}

function attempt<T>(work: () => T): { readonly value?: T; readonly reason?: string } {
  try {
    return { value: work() };
  } catch (error) {
    if (error instanceof TradeError) return { reason: error.message };
    throw error;
  }
}

/** Puts a hose and two fittings together: assembly check, cost, margins. */
export function choose(
  catalogue: Catalogue,
  demand: Demand,
  candidate: Pick<Candidate, 'hose' | 'margins' | 'lengths'>,
  ends: readonly [EndOption, EndOption],
): Choice {
  const { hose, lengths } = candidate;
  const { outsideDiameter, overall } = lengths;
  const names = [ends[0].fitting.fitting, ends[1].fitting.fitting] as const;
  const length = converted(overall, UNITS_OF[demand.units].length, catalogue.units.length);
  const made = length && attempt(() => assembly(catalogue, hose.hose, ...names, length));
  const cost = length && attempt(() => unitCost(catalogue, hose.hose, names, length, demand.quantity));
  const bore = converted(new Decimal(hose.bore), catalogue.units.length, UNITS_OF[demand.units].length);
  const run = (index: 0 | 1) =>
    straightRunMargin(catalogue, demand, { end: index === 0 ? 'A' : 'B', option: ends[index], outsideDiameter });
  const samePart = names[0] === names[1];
  return {
    ...{ hose, ends, lengths },
    margins: [
      ...candidate.margins,
      ends[0].pressure,
      ...(samePart ? [] : [ends[1].pressure]),
      velocityMargin(demand, bore),
      run(0),
      run(1),
      lengths.change,
    ],
    assembly: made?.value,
    cost: cost?.value,
    costReason: length ? cost?.reason : lengths.reason,
    wrong: made?.reason ? [made.reason] : (made?.value?.wrong ?? []),
  };
}

/** Every pair of fittings, the cheapest first. */
function pairs([atA, atB]: Candidate['ends']): (readonly [EndOption, EndOption])[] {
  const price = ([a, b]: readonly [EndOption, EndOption]) => (a.price ?? Infinity) + (b.price ?? Infinity);
  const all = atA.flatMap(a => atB.map(b => [a, b] as const));
  return all.sort((one, other) => price(one) - price(other) || 0);
}

/** The cheapest fittings that make a whole assembly, or what forbids the cheapest pair. */
function firstChoice(catalogue: Catalogue, demand: Demand, candidate: Omit<Candidate, 'cheapest'>): Choice | string {
  let refusal = '';
  for (const pair of pairs(candidate.ends)) {
    const choice = choose(catalogue, demand, candidate, pair);
    if (choice.wrong.length === 0) return choice;
    refusal ||= choice.wrong.join('; ');
  }
  return refusal;
}

/** How far from the demand a hose is that misses some of it. */
function missOf(missed: readonly Margin[]): Pick<RuledOut, 'missedBy' | 'kind'> {
  const isRefused = missed.length === 0 || missed.some(({ state, missedBy }) => state === 'missed' && missedBy === undefined);
  const isUnknown = missed.some(({ state }) => state === 'not known');
  return { missedBy: Math.max(0, ...missed.map(({ missedBy }) => missedBy ?? 0)), kind: isRefused ? 2 : isUnknown ? 1 : 0 };
}

function judge(catalogue: Catalogue, demand: Demand, hose: Hose): Candidate | RuledOut {
  const margins = hoseMargins(catalogue, hose, demand);
  const fit = hoseFit(catalogue, hose, hoseDutyOf(catalogue, demand));
  const reasons = margins.filter(rulesOut).map(reasonText);
  if (fit.ruledOut.length > 0) {
    return { hose, by: 'hose', reasons: reasons.length > 0 ? reasons : fit.ruledOut, ...missOf(margins.filter(rulesOut)) };
  }
  const [a, b] = demand.ends.map(end => endOptions(catalogue, hose, end, demand)) as [
    ReturnType<typeof endOptions>,
    ReturnType<typeof endOptions>,
  ];
  const missing = [a, b].flatMap(({ suitable, ruledOut }, index) =>
    suitable.length === 0 ? ruledOut.map(reason => `End ${index === 0 ? 'A' : 'B'}: ${reason}`) : [],
  );
  if (missing.length > 0) return { hose, by: 'couplings', reasons: missing, missedBy: 0, kind: 0 };
  const ends = [a.suitable, b.suitable] as const;
  const candidate = { hose, margins, lengths: routeLengths(catalogue, hose, demand), ends };
  const cheapest = firstChoice(catalogue, demand, candidate);
  return typeof cheapest === 'string'
    ? { hose, by: 'couplings', reasons: [cheapest], missedBy: 0, kind: 0 }
    : { ...candidate, cheapest };
}

/** Cheapest first; where the cost is not known the price of the hose orders them, behind the others. */
function byCost(one: Candidate, other: Candidate): number {
  const [a, b] = [one.cheapest.cost?.total, other.cheapest.cost?.total];
  if (a && b) return a.comparedTo(b);
  if (a || b) return a ? -1 : 1;
  return (one.hose.pricePerLength ?? Infinity) - (other.hose.pricePerLength ?? Infinity) || 0;
}

/**
 * What would nearly do comes first: hoses that only lack couplings, then those that miss by the smallest share; what is not known, and what
 * no share can be told of, comes behind.
 */
function byNearness(one: RuledOut, other: RuledOut): number {
  return (
    Number(one.by === 'hose') - Number(other.by === 'hose') ||
    one.kind - other.kind ||
    one.missedBy - other.missedBy ||
    one.reasons.length - other.reasons.length
  );
}

/** Every hose of a catalogue against a demand. */
export function candidates(catalogue: Catalogue, demand: Demand): Candidates {
  const judged = catalogue.hoses.map(hose => judge(catalogue, demand, hose));
  return {
    suitable: judged.filter(found => 'cheapest' in found).sort(byCost),
    ruledOut: judged.filter((found): found is RuledOut => 'reasons' in found).sort(byNearness),
  };
}
