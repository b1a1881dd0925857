import type { Pattern } from './gridProblem';

/** Patterns of which one at least must be used: a further row of a program over the pool. */
export interface Kind {
  readonly key: string;
  /** By their number in the pool, ascending. */
  readonly patterns: readonly number[];
}

/** The kind of all patterns that belong to it. */
export function kindOf(key: string, pool: readonly Pattern[], belongs: (pattern: Pattern) => boolean): Kind {
  return { key, patterns: pool.flatMap((pattern, number) => (belongs(pattern) ? number : [])) };
}

/** Kinds by pattern: which a pattern belongs to. */
export class KindsByPattern {
  private readonly starts: Int32Array;
  private readonly kinds: Int32Array;

  constructor(kinds: readonly Kind[], size: number) {
    this.starts = new Int32Array(size + 1);
    for (const { patterns } of kinds) for (const number of patterns) this.starts[number + 1]!++;
    for (let k = 0; k < size; k++) this.starts[k + 1]! += this.starts[k]!;
    this.kinds = new Int32Array(this.starts[size]!);
    const next = this.starts.slice(0, size);
    kinds.forEach(({ patterns }, kind) => patterns.forEach(number => (this.kinds[next[number]!++] = kind)));
  }

  /** What the duals of the kinds pay for a pattern. */
  worth(number: number, duals: ArrayLike<number>): number {
    let sum = 0;
    for (let k = this.starts[number]!; k < this.starts[number + 1]!; k++) sum += duals[this.kinds[k]!]!;
    return sum;
  }

  /** The kinds that a pattern belongs to. */
  of(number: number): Int32Array {
    return this.kinds.subarray(this.starts[number]!, this.starts[number + 1]!);
  }
}
