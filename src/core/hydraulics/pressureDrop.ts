import { TradeError } from '../tradeError';
import { frictionFactor } from './frictionFactor';
import { velocity } from './velocity';

const ROUGHEST = 0.05;

/** A flow through a straight round pipe or hose, all in SI units. */
export interface PressureDropInput {
  /** m³/s */
  readonly flow: number;
  /** m */
  readonly bore: number;
  /** m */
  readonly length: number;
  /** Kinematic viscosity, m²/s. */
  readonly viscosity: number;
  /** kg/m³ */
  readonly density: number;
  /** m; 0 = smooth */
  readonly roughness: number;
}

/**
 * Pressure lost to friction along a straight pipe or hose: f · length/bore · density · velocity²/2 (Darcy, Weisbach).
 * Fittings and bends come on top.
 * @returns Pa
 * @throws TradeError `range` where the roughness exceeds 1/20 of the bore, beyond which the friction formula does not hold
 * Source: White, Fluid Mechanics, chapter 6.
 */
export function pressureDrop({ flow, bore, length, viscosity, density, roughness }: PressureDropInput): number {
  if (roughness > ROUGHEST * bore) {
    const advice = 'it must not exceed 1/20 of the bore; give it in the unit of the bore';
    throw new TradeError('range', 'roughness', `is ${Number(((100 * roughness) / bore).toPrecision(3))} % of the bore`, advice);
  }
  if (flow === 0) return 0;
  const speed = velocity(flow, bore);
  return (frictionFactor((speed * bore) / viscosity, roughness / bore) * length * density * speed * speed) / (2 * bore);
}
