import { crimpCause } from '../../core/quality/causes/crimpCause';
import type { Interval } from '../../core/quality/causes/causeNumbers';
import type { CombinationFinding, CrimpCause, NextMeasurement } from '../../core/quality/causes/crimpCauseResult';
import { Decimal } from '../../core/units/decimal';

/** The crimps of one machine at their present settings. */
export interface PresentCrimps {
  readonly groups: readonly { readonly name: string; readonly deviations: readonly Decimal[] }[];
  readonly tolerance: Decimal;
  readonly confidence: number;
  readonly actionShare: Decimal;
  /** True where all crimps are known to be of one die. */
  readonly oneDie: boolean;
}

/** The finding on one combination. */
export interface CombinationReadingsCause {
  /** Mean deviation of its crimps, the machine's included. */
  readonly mean: Decimal;
  /** Change of diameter wanted. */
  readonly correction: Decimal;
  readonly finding: CombinationFinding;
}

/** The finding on the machine. */
export interface MachineReadingsCause {
  /** As CRIMPCAUSE says it. */
  readonly finding: string;
  readonly off: CrimpCause['off'];
  readonly crimps: number;
  readonly offset: Decimal | undefined;
  readonly interval?: Interval | undefined;
  readonly correction: Decimal;
  readonly next?: NextMeasurement | undefined;
  readonly combinations: readonly CombinationReadingsCause[];
}

/** Whether the machine is off, or single settings: CRIMPCAUSE without dates and dies. */
export function machineCause({ groups, tolerance, confidence, actionShare, oneDie }: PresentCrimps): MachineReadingsCause {
  const crimps = groups.flatMap(({ name, deviations }) =>
    deviations.map(deviation => ({
      combination: name,
      deviation: deviation.toNumber(),
      tolerance: tolerance.toNumber(),
      die: oneDie ? 'one' : undefined,
    })),
  );
  const cause = crimpCause({ crimps, confidence, actionShare: actionShare.toNumber() });
  const { offset, interval, correction } = cause.machine;
  return {
    finding: cause.finding,
    off: cause.off,
    crimps: cause.crimps,
    offset: offset === undefined ? undefined : new Decimal(offset),
    interval,
    correction: new Decimal(correction),
    next: cause.next,
    combinations: cause.combinations.map((combination, index) => {
      const { deviations } = groups[index]!;
      return {
        mean: Decimal.sum(...deviations).div(deviations.length),
        correction: new Decimal(combination.correction),
        finding: combination.finding,
      };
    }),
  };
}
