/**
 * Length tolerances of hose assemblies, SAE J517.
 * Source: SAE J517, recalled from memory, not seen: compare with your copy before you rely on it, and edit here.
 * Units: inches. A band holds up to and including its `upTo`; the deviation holds both ways.
 */
export const saeJ517Lengths = [
  { upToIn: 12, plusMinusIn: '0.125' },
  { upToIn: 18, plusMinusIn: '0.1875' },
  { upToIn: 36, plusMinusIn: '0.25' },
] as const satisfies readonly { readonly upToIn: number; readonly plusMinusIn: string }[];

/** Above the last band: a share of the overall length, to the nearest 1/8 in. */
export const saeJ517Above = { share: '0.01', toNearestIn: '0.125' } as const;
