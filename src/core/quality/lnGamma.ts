/** B₂ₖ / (2k (2k − 1)), k = 1 … 7: coefficients of Stirling's series. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];
/** From here on seven terms give double precision. */
const LARGE = 15;

/**
 * Natural logarithm of the gamma function of a positive number: Stirling's series, reached from below by Γ(x + 1) = x Γ(x).
 * Source: NIST Digital Library of Mathematical Functions 5.11.1 and 5.5.1.
 */
export function lnGamma(x: number): number {
  let shifted = x;
  let product = 1;
  while (shifted < LARGE) {
    product *= shifted;
    shifted += 1;
  }
  const inverseSquare = 1 / (shifted * shifted);
  const series = STIRLING.reduceRight((sum, coefficient) => sum * inverseSquare + coefficient, 0) / shifted;
  return (shifted - 0.5) * Math.log(shifted) - shifted + Math.log(2 * Math.PI) / 2 + series - Math.log(product);
}
