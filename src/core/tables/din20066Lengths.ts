/**
 * Length tolerances of hose assemblies, DIN 20066.
 * Source: DIN 20066, recalled from memory, not seen: compare with your copy before you rely on it, and edit here.
 * Units: lengths and bores in mm; deviations in mm, or as a share of the overall length.
 * A band holds up to and including its `upTo`. DN 25 ends at the real bore 25.4 mm, DN 50 at 50.8 mm.
 */
export const din20066BoresUpToMm = ['25.4', '50.8'] as const;

/** Deviations in the order of the bore bands. `over` and `under` are added to and taken from the overall length. */
export const din20066Lengths = [
  { upToMm: 630, kind: 'mm', over: [7, 12], under: [3, 4] },
  { upToMm: 1250, kind: 'mm', over: [12, 20], under: [4, 6] },
  { upToMm: 2500, kind: 'mm', over: [20, 25], under: [6, 6] },
  { upToMm: 8000, kind: 'share', over: ['0.015', '0.015'], under: ['0.005', '0.005'] },
  { upToMm: Infinity, kind: 'share', over: ['0.03', '0.03'], under: ['0.01', '0.01'] },
] as const satisfies readonly {
  readonly upToMm: number;
  readonly kind: 'mm' | 'share';
  readonly over: readonly [number | string, number | string];
  readonly under: readonly [number | string, number | string];
}[];
