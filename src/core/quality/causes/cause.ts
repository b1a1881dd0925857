import type { CrimpSeries } from './crimpSeries';
import type { TimeStretches } from './timeStretches';

/**
 * What a cause does: `since` and `until` are steps at a boundary, `rising` grows from the boundary (or the first date) to now, `rising until` grew from the
 * first date to the boundary and is gone since.
 */
export type MachineKind = 'machine' | 'machine since' | 'machine until' | 'machine rising' | 'machine rising until';
export type DieKind = 'die' | 'die since' | 'die rising';
export type CauseKind = MachineKind | DieKind | 'combination' | 'crimp';

/** A cause that acts on the machine or on a die: 1, or a ramp, over some stretches of time. */
export interface TimeLine {
  /** First stretch, and the one after the last. */
  readonly from: number;
  readonly to: number;
  /** Elapsed time at which a ramp is 0, and its rise in a unit of time; a rise of 0 is a step of 1. */
  readonly start: number;
  readonly rise: number;
}

/** A candidate cause. */
export interface Cause {
  readonly kind: CauseKind;
  /** Number of the combination, die or crimp it belongs to; −1 for the machine. */
  readonly of: number;
  /** First crimp after the change, 0 for a ramp from the first date; undefined where nothing changes with time. */
  readonly boundary?: number | undefined;
  /** Missing for combinations and single crimps. */
  readonly line?: TimeLine | undefined;
}

/** True for what changes the machine with time. */
export const isMachineChange = ({ kind }: Cause) => kind.startsWith('machine ');
/** True for what changes a die with time. */
export const isDieChange = ({ kind }: Cause) => kind.startsWith('die ');
/** What is left of the cause now, for a coefficient of 1. */
export const presentShare = ({ kind }: Cause): number => (kind.endsWith('until') ? 0 : 1);
/** The whole machine, or one combination, die or crimp, whatever the dates. */
export const isOfMachine = ({ kind }: Cause) => kind.startsWith('machine');
export const isOfDie = ({ kind }: Cause) => kind.startsWith('die');

/** A cause's value at a crimp: 1, or how far its ramp has come. */
export function causeAt({ kind, of, line }: Cause, crimp: number, series: CrimpSeries, time: TimeStretches): number {
  if (!line) return (kind === 'crimp' ? crimp : series.combination[crimp]) === of ? 1 : 0;
  if (of >= 0 && series.die[crimp] !== of) return 0;
  const stretch = time.stretch[crimp]!;
  if (stretch < line.from || stretch >= line.to) return 0;
  return line.rise === 0 ? 1 : (time.elapsed[crimp]! - line.start) * line.rise;
}

/** A cause's column in the model of deviations in tolerances; what machine and dies add is in the smallest one. */
export function columnAt(cause: Cause, crimp: number, series: CrimpSeries, time: TimeStretches): number {
  return causeAt(cause, crimp, series, time) * (cause.line ? series.share[crimp]! : 1);
}
