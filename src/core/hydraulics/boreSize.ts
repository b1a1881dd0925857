/**
 * Smallest round bore in which a flow is no faster than a velocity.
 * @param flow m³/s
 * @param velocity m/s, above 0
 * @returns m
 * Source: continuity.
 */
export function boreSize(flow: number, velocity: number): number {
  return Math.sqrt((4 * flow) / (Math.PI * velocity));
}
