import { max } from '../arithmetic';
import { patternKey, type GridProblem, type Pattern } from './gridProblem';
import { MasterRows, type Duals, type ExtraRow } from './masterRows';
import { clipped } from './residual';
import { Simplex } from './simplex';
import type { Work } from './work';

/** What setting a program up takes, and each pattern that comes in. */
const STEPS_A_PROGRAM = 20;
const STEPS_A_PATTERN = 1;

/** What leaving out one piece costs in the linear program, so that it does so only where it must. */
function shortCost(problem: GridProblem): number {
  return 10 * max(1, ...problem.stock.map(stock => stock.whole));
}

/** A pattern of a basis, and the number that it was added with. */
interface BasicPattern {
  readonly pattern: Pattern;
  readonly source: number;
}

/** A basis that another program may start from: patterns, and logical columns by their row. */
export interface Basis {
  readonly rows: ReadonlySet<string>;
  readonly columns: readonly (BasicPattern | { readonly kind: 'own' | 'surplus'; readonly row: string })[];
}

/** The linear program over the patterns known so far. */
export class Master {
  readonly patterns: Pattern[] = [];
  private readonly sources: number[] = [];
  private readonly numbers = new Map<string, number>();
  private readonly rows: MasterRows;
  private readonly simplex: Simplex;

  constructor(
    public problem: GridProblem,
    start: Iterable<Pattern>,
    private readonly work: Work,
    extra: readonly ExtraRow[] = [],
  ) {
    this.rows = new MasterRows(problem, extra);
    this.simplex = new Simplex(this.rows.rightSides(problem), this.rows.cover, shortCost(problem), work);
    work.spend(STEPS_A_PROGRAM);
    for (const pattern of start) this.add(pattern);
  }

  /** Goes on with what is left of the problem after some patterns were fixed. */
  reduce(rest: GridProblem): void {
    this.problem = rest;
    this.simplex.changeRhs(this.rows.rightSides(rest));
  }

  /**
   * Adds a pattern (cut down to the demand) unless it is known.
   * @param source a number that the basis gives back with it
   * @param further the further rows that it counts in
   */
  add(pattern: Pattern, source = -1, further?: Int32Array): boolean {
    this.work.spend(STEPS_A_PATTERN);
    const fitting = clipped(this.problem, pattern);
    if (!fitting) return false;
    const key = patternKey(fitting);
    if (this.numbers.has(key)) return false;
    this.numbers.set(key, this.patterns.push(fitting) - 1);
    this.sources.push(source);
    const { rows, entries } = this.rows.of(this.problem, fitting, further);
    this.simplex.addColumn(fitting.loss, rows, entries);
    return true;
  }

  /** Forbids the pattern that was added last; it only helps to start from a basis. */
  banLast(): void {
    this.simplex.ban(this.patterns.length - 1);
  }

  /** The basis of the last solution. */
  get basis(): Basis {
    const { keys, cover } = this.rows;
    const columns = this.simplex.basicColumns.map(column => {
      if (column < keys.length) return { kind: 'own', row: keys[column]! } as const;
      if (column < keys.length + cover) return { kind: 'surplus', row: keys[column - keys.length]! } as const;
      const number = column - keys.length - cover;
      return { pattern: this.patterns[number]!, source: this.sources[number]! };
    });
    return { rows: new Set(keys), columns };
  }

  /** Starts from the basis of a like program, new rows left to themselves; false where that does not work, and nothing is covered. */
  startFrom({ rows, columns }: Basis): boolean {
    const { keys, cover } = this.rows;
    const m = keys.length;
    const at = new Map(keys.map((key, row) => [key, row]));
    const numbers = columns.map(column => {
      if ('kind' in column) return (at.get(column.row) ?? NaN) + (column.kind === 'surplus' ? m : 0);
      return this.simplex.numberOf(this.numbers.get(patternKey(column.pattern)) ?? NaN);
    });
    keys.forEach((key, row) => rows.has(key) || numbers.push(row < cover ? m + row : row));
    return numbers.length === m && numbers.every(number => number >= 0) && this.simplex.start(numbers);
  }

  /**
   * Solves over the known patterns.
   * @param enough ends it once no solution loses less
   */
  solve(enough = Infinity): boolean {
    return this.simplex.solve(enough);
  }

  get objective(): number {
    return this.simplex.objective();
  }

  duals(): Duals {
    return this.rows.duals(this.simplex.duals());
  }

  /** Patterns in use (by their number in `patterns`) with their fractional values, and how many pieces stay uncovered. */
  solution(): { columns: [number, number][]; short: number } {
    return this.simplex.solution();
  }
}
