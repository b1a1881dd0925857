import type { MachineReadings } from './analyseReadings';
import { deviationOf, type JudgedCrimp } from './judgedCrimp';

/** A crimp on the picture over time. */
export interface TimePoint {
  readonly crimp: JudgedCrimp;
  readonly date: number;
  readonly deviation: number;
  /** Made since the last change, or before it. */
  readonly isCurrent: boolean;
}

/** The machine's offset at a date. */
export interface OffsetPoint {
  readonly date: number;
  readonly offset: number;
}

/** Deviations over time with what the machine did, stretch by stretch between its changes. */
export interface TimePicture {
  readonly points: readonly TimePoint[];
  readonly stretches: readonly (readonly OffsetPoint[])[];
  /** Dates at which the machine changed as it was found, and since when crimps count as it was logged or set. */
  readonly changes: readonly number[];
  readonly epoch: number | undefined;
}

/** What happened over time; undefined where there are not two dates. */
export function timePicture({ crimps, current, counts, cause }: MachineReadings): TimePicture | undefined {
  if (!counts.hasDates) return undefined;
  const isCurrent = new Set(current);
  const points = crimps.flatMap((crimp): TimePoint[] => {
    const { date } = crimp;
    return date === undefined || counts.slipped.has(crimp)
      ? []
      : [{ crimp, date, deviation: deviationOf(crimp), isCurrent: isCurrent.has(crimp) }];
  });
  if (new Set(points.map(({ date }) => date)).size < 2) return undefined;
  const { offsetAt } = cause;
  const stretches: OffsetPoint[][] = [];
  for (const crimp of offsetAt ? counts.counted : []) {
    if (stretches.length === 0 || cause.changes.includes(crimp)) stretches.push([]);
    stretches.at(-1)!.push({ date: crimp.date!, offset: offsetAt!(crimp) });
  }
  const first = counts.present.find(({ date }) => date !== undefined)?.date;
  return {
    points,
    stretches: stretches.filter(({ length }) => length > 0),
    changes: cause.changes.map(({ date }) => date!),
    epoch: counts.epoch && !counts.epoch.isBlind ? first : undefined,
  };
}
