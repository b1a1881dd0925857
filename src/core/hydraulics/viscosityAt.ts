const KELVIN = 273.15;

/** A kinematic viscosity (mm²/s, 2 or more) known at a temperature (°C). */
export interface ViscosityPoint {
  readonly celsius: number;
  readonly viscosity: number;
}

const walther = (viscosity: number) => Math.log10(Math.log10(viscosity + 0.7));

/**
 * Kinematic viscosity of a mineral oil at a temperature, from two known points: log log (ν + 0.7) falls along a straight line over log T.
 * @param celsius temperature, °C
 * @returns mm²/s
 * Source: ASTM D341; below 2 mm²/s with its correction of the 0.7.
 */
export function viscosityAt(celsius: number, first: ViscosityPoint, second: ViscosityPoint): number {
  const logT = (degrees: number) => Math.log10(degrees + KELVIN);
  const slope = (walther(second.viscosity) - walther(first.viscosity)) / (logT(second.celsius) - logT(first.celsius));
  const line = walther(first.viscosity) + slope * (logT(celsius) - logT(first.celsius));
  const plain = 10 ** (10 ** line) - 0.7;
  if (plain >= 2) return plain;
  return plain - Math.exp(-0.7487 - 3.295 * plain + 0.6119 * plain ** 2 - 0.3193 * plain ** 3);
}
