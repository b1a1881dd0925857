export const LAMINAR_UP_TO = 2300;
export const TURBULENT_FROM = 4000;
/** Binary noise of a Reynolds number that lies on a bound. */
const NOISE = 1e-12;

/** Colebrook's equation for x = 1/√f by Newton's method: x + 2·log10(roughness/3.7 + 2.51·x/Re) = 0, concave, so it converges from above and below. */
function colebrook(reynolds: number, relativeRoughness: number): number {
  let x = 7;
  for (let turn = 0; turn < 50; turn += 1) {
    const inner = relativeRoughness / 3.7 + (2.51 * x) / reynolds;
    const error = x + 2 * Math.log10(inner);
    const slope = 1 + (2 / Math.LN10) * (2.51 / reynolds / inner);
    const next = x - error / slope;
    const done = Math.abs(next - x) <= 1e-15 * x;
    x = next;
    if (done) break;
  }
  return 1 / (x * x);
}

/**
 * Darcy friction factor of a round pipe: 64/Re up to Re 2300, Colebrook from 4000, between them the larger of the two.
 * @param reynolds Reynolds number, above 0
 * @param relativeRoughness roughness ÷ bore; 0 = smooth
 * Source: Colebrook (1939) with the constants 3.7 and 2.51; Hagen and Poiseuille.
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  const laminar = 64 / reynolds;
  if (reynolds <= LAMINAR_UP_TO * (1 + NOISE)) return laminar;
  const turbulent = colebrook(reynolds, relativeRoughness);
  return reynolds >= TURBULENT_FROM ? turbulent : Math.max(laminar, turbulent);
}
