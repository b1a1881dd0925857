import type { JudgedCrimp } from './judgedCrimp';

/** How a finding is shown; only `success` is green. */
export type FindingLook = 'warning' | 'info' | 'success';

/** A crimp that somebody may leave out for good, and why. */
export interface DoubtfulCrimp {
  readonly crimp: JudgedCrimp;
  /** What is odd about it, with its row. */
  readonly sentence: string;
}

/** One thing that was found, in words. */
export interface Finding {
  readonly kind:
    'mixed' | 'alike' | 'blind' | 'machine' | 'die' | 'setting' | 'open' | 'too few' | 'rejected' | 'doubtful' | 'in order';
  readonly look: FindingLook;
  readonly title: string;
  /** One sentence that says it all. */
  readonly sentence: string;
  /** What to do, a sentence each. */
  readonly actions: readonly string[];
  /** What to measure next, a sentence each. */
  readonly next: readonly string[];
  /** How sure it is, and what is known besides. */
  readonly facts: readonly string[];
  /** Crimps to be left out, one by one. */
  readonly doubtful?: readonly DoubtfulCrimp[];
}

/** All that a finding says, in order. */
export const findingLines = ({ sentence, actions, next, facts, doubtful }: Finding): readonly string[] => [
  sentence,
  ...actions,
  ...next,
  ...facts,
  ...(doubtful ?? []).map(each => each.sentence),
];
