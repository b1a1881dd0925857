import { lnGamma } from './lnGamma';
import { SMALLEST, ENOUGH } from './incompleteGamma';

const MOST_TERMS = 10_000;

/** Continued fraction of the incomplete beta function by Lentz's method; converges fast for x < (a + 1)/(a + b + 2). */
function continuedFraction(x: number, a: number, b: number): number {
  const kept = (value: number) => (Math.abs(value) < SMALLEST ? SMALLEST : value);
  let c = 1;
  let d = 1 / kept(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= MOST_TERMS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / kept(1 + even * d);
    c = kept(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / kept(1 + odd * d);
    c = kept(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) <= 2 * ENOUGH) break;
  }
  return fraction;
}

/**
 * Regularized incomplete beta function I_x(a, b). Its complement is given with it, so that neither tail loses digits.
 * @param x 0 … 1; `y` = 1 − x, given apart because it may be tiny
 * @returns [I_x(a, b), 1 − I_x(a, b)]
 * Source: NIST Digital Library of Mathematical Functions 8.17.22.
 */
export function incompleteBeta(x: number, y: number, a: number, b: number): [number, number] {
  if (x <= 0) return [0, 1];
  if (y <= 0) return [1, 0];
  const front = Math.exp(a * Math.log(x) + b * Math.log(y) + lnGamma(a + b) - lnGamma(a) - lnGamma(b));
  if (x <= (a + 1) / (a + b + 2)) {
    const lower = (front * continuedFraction(x, a, b)) / a;
    return [lower, 1 - lower];
  }
  const upper = (front * continuedFraction(y, b, a)) / b;
  return [1 - upper, upper];
}
