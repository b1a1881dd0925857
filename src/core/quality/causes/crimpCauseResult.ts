import type { Interval } from './causeNumbers';
import type { Explanation } from './presentState';

/** What is off, in this order. */
export type WhatIsOff = 'MACHINE' | 'MACHINE OR DIE' | 'DIE' | 'SETTING';
export type CombinationFinding = 'OWN SETTING' | 'WITH THE DIE' | 'WITH THE MACHINE' | 'CANNOT TELL';
export type DieFinding = 'DIE' | 'WITH THE MACHINE' | 'CANNOT TELL';

/** A change with time. Places are those of the list that came, from 0. */
export interface CauseSince {
  /** First crimp after the last change; where a ramp begins. */
  readonly place: number;
  /** True where it has grown since. */
  readonly isRising: boolean;
}

/** The finding on the machine. */
export interface MachineCause {
  /** False where explanations as good disagree about the machine: then nothing else can be told either. */
  readonly isSure: boolean;
  /** Offset now; undefined without any crimp. */
  readonly offset: number | undefined;
  readonly interval?: Interval | undefined;
  /** Change of diameter wanted. */
  readonly correction: number;
  readonly since?: CauseSince | undefined;
  /** Offset before the last change. */
  readonly before?: number | undefined;
}

/** The finding on one combination; its offset is its own, beyond machine and die. */
export interface CombinationCause {
  readonly name: string;
  readonly crimps: number;
  readonly offset: number | undefined;
  readonly interval?: Interval | undefined;
  /** Change of diameter wanted. */
  readonly correction: number;
  readonly finding: CombinationFinding;
}

/** The finding on one die; its offset is its own, beyond the machine. */
export interface DieCause {
  readonly name: string;
  readonly crimps: number;
  readonly offset: number | undefined;
  readonly finding: DieFinding;
  readonly since?: CauseSince | undefined;
}

/** A crimp that no cause explains: what it is off beyond machine and die. */
export interface CrimpSetAside {
  readonly place: number;
  readonly offset: number;
}

/** What to crimp and measure next. */
export interface NextMeasurement {
  readonly crimps: number;
  /** Undefined: combinations that were not crimped yet. */
  readonly combination: string | undefined;
  readonly die?: string | undefined;
  /** True where the combination is to be crimped with another die that fits. */
  readonly otherDie: boolean;
}

/** What is off now, since when, and what to do. Diameters in the unit that came. */
export interface CrimpCause {
  /** What is off, joined by ` + `; else `IN SPEC`, `CANNOT TELL`, `NOT ENOUGH DATA`. */
  readonly finding: string;
  readonly off: readonly WhatIsOff[];
  readonly crimps: number;
  readonly machine: MachineCause;
  readonly dies: readonly DieCause[];
  /** In order of first appearance. */
  readonly combinations: readonly CombinationCause[];
  readonly setAside: readonly CrimpSetAside[];
  /** Present wherever something cannot be told. */
  readonly next?: NextMeasurement | undefined;
  /** The best explanation, in tolerances; missing where there are too few data. */
  readonly best?: Explanation | undefined;
  /** Those as good that say something else. */
  readonly rivals: readonly Explanation[];
  /** Scatter inside the combinations, NaN where it is not known. */
  readonly scatter: number;
  /** Offset of the machine at a crimp, counted in order of time, as the best explanation has it; missing where there are too few data. */
  readonly machineAt?: ((crimp: number) => number) | undefined;
}
