import { TradeError } from '../../tradeError';
import { causeDecision, type CauseDecision, type DecisionLimits } from './causeDecision';
import { causesOfCombinations, causesOfDies, causeOfMachine, whatIsOff } from './causeFindings';
import { causeNumbers } from './causeNumbers';
import type { CrimpCause, NextMeasurement } from './crimpCauseResult';
import { crimpSeries, type CrimpOfMachine, type CrimpSeries } from './crimpSeries';
import { explainCrimps, type ExplainedCrimps } from './explainCrimps';
import { measureNext, otherExplanations } from './measureNext';
import { areNotEnough, notEnoughCrimps } from './notEnoughCrimps';

/** What is asked of the crimps of one machine. All diameters in one unit. */
export interface CrimpCauseInput extends DecisionLimits {
  readonly crimps: readonly CrimpOfMachine[];
}

const MOST_COMBINATIONS = 500;

function nextMeasurement(
  { machineSure, combinations }: CauseDecision,
  { all, scatter }: ExplainedCrimps,
  series: CrimpSeries,
  actionShare: number,
): NextMeasurement {
  const open = machineSure ? series.combinations.flatMap((_, number) => (combinations[number] === 'open' ? [number] : [])) : [];
  const next = measureNext(all, series, scatter, actionShare, open);
  return {
    ...next,
    combination: series.combinations[next.combination]!,
    die: next.die === undefined ? undefined : series.dies[next.die],
  };
}

/**
 * What is off now, and since when: the machine, dies, settings of single combinations; the fewest causes that explain the crimps. Where another
 * explanation is as good it says so and corrects nothing.
 * @throws TradeError with more than 500 combinations
 * Sources of the steps are named where they stand; how often it is right: bench/README.md.
 */
export function crimpCause({ crimps, confidence, actionShare }: CrimpCauseInput): CrimpCause {
  const series = crimpSeries(crimps);
  if (series.combinations.length > MOST_COMBINATIONS) {
    const received = `has ${series.combinations.length} names`;
    throw new TradeError(
      'range',
      'combination',
      received,
      `give at most ${MOST_COMBINATIONS} combinations of one machine a call`,
    );
  }
  if (areNotEnough(series)) return notEnoughCrimps(series, confidence);

  const explained = explainCrimps(series);
  const { all, time } = explained;
  const best = all[0]!;
  const numbers = causeNumbers(series, time, best.causes, confidence);
  const facts = series.ofCombination.map((ofIt, number) => {
    const [low, high] = numbers.combinations[number]?.interval ?? [0, 0];
    return { crimps: ofIt.length, atLeast: Math.max(0, low, -high) / series.crimps[ofIt[0]!]!.tolerance };
  });
  const decision = causeDecision(all, { confidence, actionShare }, facts, series.dies.length);
  const off = whatIsOff(decision, series);
  const isOpen = !decision.machineSure || decision.combinations.includes('open') || decision.dies.includes('open');
  return {
    finding: off.join(' + ') || (isOpen ? 'CANNOT TELL' : 'IN SPEC'),
    off,
    crimps: crimps.length,
    machine: causeOfMachine(decision, numbers, best, series),
    dies: causesOfDies(decision, numbers, best, series),
    combinations: causesOfCombinations(decision, numbers, series),
    setAside: best.causes
      .filter(({ kind }) => kind === 'crimp')
      .map(({ of }) => ({ place: series.places[of]!, offset: numbers.beyond(of) }))
      .sort((a, b) => a.place - b.place),
    next: isOpen ? nextMeasurement(decision, explained, series, actionShare) : undefined,
    best,
    rivals: otherExplanations(all, actionShare),
    scatter: numbers.scatter.scatter,
    machineAt: numbers.machineAt,
  };
}
