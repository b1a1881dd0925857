import { lnGamma } from './lnGamma';

export const SMALLEST = 1e-300;
export const ENOUGH = 2 ** -53;
const MOST_TERMS = 100_000;

function series(a: number, x: number): number {
  let term = 1 / a;
  let total = term;
  for (let n = 1; n <= MOST_TERMS && term > total * ENOUGH; n += 1) {
    term *= x / (a + n);
    total += term;
  }
  return total;
}

/** Continued fraction of the upper incomplete gamma function by Lentz's method. */
function continuedFraction(a: number, x: number): number {
  const kept = (value: number) => (Math.abs(value) < SMALLEST ? SMALLEST : value);
  let b = x + 1 - a;
  let c = 1 / SMALLEST;
  let d = 1 / kept(b);
  let fraction = d;
  for (let n = 1; n <= MOST_TERMS; n += 1) {
    const term = -n * (n - a);
    b += 2;
    d = 1 / kept(term * d + b);
    c = kept(b + term / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) <= 2 * ENOUGH) break;
  }
  return fraction;
}

/**
 * Regularized incomplete gamma function.
 * @returns [P(a, x), Q(a, x)], lower and upper
 * Source: NIST Digital Library of Mathematical Functions 8.7.1, 8.9.2.
 */
export function incompleteGamma(a: number, x: number): [number, number] {
  if (x <= 0) return [0, 1];
  const front = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x < a + 1) {
    const lower = front * series(a, x);
    return [lower, 1 - lower];
  }
  const upper = front * continuedFraction(a, x);
  return [1 - upper, upper];
}
