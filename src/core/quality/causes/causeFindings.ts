import { isDieChange, isMachineChange } from './cause';
import type { CauseDecision } from './causeDecision';
import type { CauseNumbers } from './causeNumbers';
import { causeSince, lastBoundary } from './causeSince';
import type { CombinationCause, DieCause, MachineCause, WhatIsOff } from './crimpCauseResult';
import type { CrimpSeries } from './crimpSeries';
import type { Explanation } from './presentState';

const OWN_FINDINGS = { off: 'OWN SETTING', 'not off': 'WITH THE MACHINE', open: 'CANNOT TELL' } as const;
const DIE_FINDINGS = { off: 'DIE', 'not off': 'WITH THE MACHINE', open: 'CANNOT TELL' } as const;

/** The machine: its offset now, what to change, since when and what was before. */
export function causeOfMachine(
  { machineSure, machineOff }: CauseDecision,
  { machine, machineAt }: CauseNumbers,
  best: Explanation,
  series: CrimpSeries,
): MachineCause {
  const offset = machine?.offset ?? 0;
  if (!machineSure) return { isSure: false, offset, correction: 0 };
  const changes = best.causes.filter(isMachineChange);
  const boundary = lastBoundary(changes);
  return {
    isSure: true,
    offset,
    interval: machine?.interval,
    correction: machineOff ? -offset : 0,
    since: causeSince(changes, series),
    before: boundary === undefined ? undefined : machineAt(Math.max(0, boundary - 1)),
  };
}

/** Every die: a worn one is replaced, not corrected. */
export function causesOfDies({ dies }: CauseDecision, numbers: CauseNumbers, best: Explanation, series: CrimpSeries): DieCause[] {
  return series.dies.map((name, die) => ({
    name,
    crimps: series.die.filter(each => each === die).length,
    offset: numbers.dies[die],
    finding: DIE_FINDINGS[dies[die]!],
    since:
      dies[die] === 'open'
        ? undefined
        : causeSince(
            best.causes.filter(cause => isDieChange(cause) && cause.of === die),
            series,
          ),
  }));
}

/** Every combination: off by its own setting, or with its die (that of its newest crimp) or the machine. */
export function causesOfCombinations(
  { combinations, dies }: CauseDecision,
  numbers: CauseNumbers,
  series: CrimpSeries,
): CombinationCause[] {
  return series.combinations.map((name, number) => {
    const crimps = series.ofCombination[number]!;
    const { offset, interval } = numbers.combinations[number] ?? { offset: undefined };
    const decision = combinations[number]!;
    const isWithDie = decision === 'not off' && dies[series.die[crimps[crimps.length - 1]!]!] === 'off';
    return {
      name,
      crimps: crimps.length,
      offset,
      interval,
      correction: decision === 'off' ? -(offset ?? 0) : 0,
      finding: isWithDie ? 'WITH THE DIE' : OWN_FINDINGS[decision],
    };
  });
}

/** Step 10: what is off. */
export function whatIsOff({ machineOff, combinations, dies }: CauseDecision, { oneDie }: CrimpSeries): WhatIsOff[] {
  const machine: WhatIsOff = oneDie ? 'MACHINE OR DIE' : 'MACHINE';
  return [
    ...(machineOff ? [machine] : []),
    ...(dies.includes('off') ? ['DIE' as const] : []),
    ...(combinations.includes('off') ? ['SETTING' as const] : []),
  ];
}
