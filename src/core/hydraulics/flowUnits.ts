/** Systems of units of the hydraulic functions: `metric` L/min, mm, m, m/s, bar, °C; `US` gpm, in, ft, ft/s, psi, °F. */
export type FlowUnits = 'metric' | 'US';

/**
 * One unit of each quantity in SI units.
 * Source: NIST SP 811 (2008), appendix B: inch .0254 m, foot .3048 m, US gallon 3.785411784 L and psi 6894.757293168361 Pa.
 */
export const SI_OF = {
  metric: { flow: 1e-3 / 60, bore: 1e-3, length: 1, velocity: 1, pressure: 1e5 },
  US: { flow: 3.785411784e-3 / 60, bore: 0.0254, length: 0.3048, velocity: 0.3048, pressure: 6894.757293168361 },
} as const satisfies Record<FlowUnits, Record<'flow' | 'bore' | 'length' | 'velocity' | 'pressure', number>>;
