import type { Decimal } from '../units/decimal';

/** A run rule: so many of the last so many points at a level or further out, all on one side. */
interface RunRule {
  readonly rule: number;
  readonly hits: number;
  readonly outOf: number;
  readonly level: number;
}

/** Level 1 is off the centre line, 2 beyond one sigma, 3 beyond two, 4 beyond three. */
const WESTERN_ELECTRIC: readonly RunRule[] = [
  { rule: 1, hits: 1, outOf: 1, level: 4 },
  { rule: 2, hits: 2, outOf: 3, level: 3 },
  { rule: 3, hits: 4, outOf: 5, level: 2 },
  { rule: 4, hits: 8, outOf: 8, level: 1 },
];

/** Level of a point, negative below the centre line. */
function levelOf(distance: Decimal, sigma: Decimal): number {
  const level = [0, 1, 2, 3].filter(sigmas => distance.abs().gt(sigma.times(sigmas))).length;
  return distance.isNegative() ? -level : level;
}

/**
 * The Western Electric rules that each point of a control chart completes. A point completes a rule only where it is itself one of
 * the points that the rule counts; a point exactly on a line is not beyond it.
 * @param values points in the order they were made
 * @param centre centre line
 * @param sigma standard deviation of the points, above 0
 * @returns one list of rule numbers (1 … 4) a point
 * Source: Western Electric, Statistical Quality Control Handbook (1956); NIST/SEMATECH e-Handbook 6.3.2.
 */
export function runSignals(values: readonly Decimal[], centre: Decimal, sigma: Decimal): number[][] {
  const levels = values.map(value => levelOf(value.minus(centre), sigma));
  const completes = ({ hits, outOf, level }: RunRule, index: number) => {
    const side = Math.sign(levels[index]!);
    const recent = levels.slice(Math.max(0, index - outOf + 1), index + 1);
    return side * levels[index]! >= level && recent.filter(other => side * other >= level).length >= hits;
  };
  return values.map((_, index) => WESTERN_ELECTRIC.filter(rule => completes(rule, index)).map(({ rule }) => rule));
}
