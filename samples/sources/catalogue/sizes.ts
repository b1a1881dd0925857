/** Nominal size of a hose: the number behind DN. */
export type Size = 6 | 8 | 10 | 12 | 16 | 19 | 25 | 31 | 38 | 51;

/**
 * Bore of each nominal size in mm, and its nominal inches as a fraction.
 * Source: ISO 4397 and EN 853, recalled from memory: compare with your own copy.
 */
export const bores: Readonly<Record<Size, { readonly mm: number; readonly inch: string }>> = {
  6: { mm: 6.4, inch: '1/4' },
  8: { mm: 7.9, inch: '5/16' },
  10: { mm: 9.5, inch: '3/8' },
  12: { mm: 12.7, inch: '1/2' },
  16: { mm: 15.9, inch: '5/8' },
  19: { mm: 19.1, inch: '3/4' },
  25: { mm: 25.4, inch: '1' },
  31: { mm: 31.8, inch: '1 1/4' },
  38: { mm: 38.1, inch: '1 1/2' },
  51: { mm: 50.8, inch: '2' },
};

/** Part names say the size like this. */
export const dn = (size: Size) => `DN ${size}`;
