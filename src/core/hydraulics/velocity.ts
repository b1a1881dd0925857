/**
 * Mean velocity of a flow in a round bore: flow ÷ (π/4 · bore²).
 * @param flow m³/s
 * @param bore m
 * @returns m/s
 * Source: continuity.
 */
export function velocity(flow: number, bore: number): number {
  return (4 * flow) / (Math.PI * bore * bore);
}
