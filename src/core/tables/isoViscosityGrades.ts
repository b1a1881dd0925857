/**
 * ISO viscosity grades: kinematic viscosity at 40 °C (midpoint), and at 100 °C for a viscosity index of 100; mm²/s.
 * Source: ISO 3448:1992 for the grades and midpoints; the value at 100 °C is where column H of ASTM D2270 table 1 (linear between its rows; its
 * equation above 70) equals the midpoint. Undefined where it would lie below 2 mm²/s: no viscosity index exists there.
 */
export const ISO_VISCOSITY_GRADES = [
  { grade: 2, at40: 2.2, at100: undefined },
  { grade: 3, at40: 3.2, at100: undefined },
  { grade: 5, at40: 4.6, at100: undefined },
  { grade: 7, at40: 6.8, at100: 2.0812 },
  { grade: 10, at40: 10, at100: 2.658541 },
  { grade: 15, at40: 15, at100: 3.409589 },
  { grade: 22, at40: 22, at100: 4.294048 },
  { grade: 32, at40: 32, at100: 5.361856 },
  { grade: 46, at40: 46, at100: 6.76036 },
  { grade: 68, at40: 68, at100: 8.731304 },
  { grade: 100, at40: 100, at100: 11.38374 },
  { grade: 150, at40: 150, at100: 15.02 },
  { grade: 220, at40: 220, at100: 19.435294 },
  { grade: 320, at40: 320, at100: 24.953846 },
  { grade: 460, at40: 460, at100: 31.775229 },
  { grade: 680, at40: 680, at100: 41.136 },
  { grade: 1000, at40: 1000, at100: 52.765101 },
  { grade: 1500, at40: 1500, at100: 68.333333 },
  { grade: 2200, at40: 2200, at100: 86.791578 },
  { grade: 3200, at40: 3200, at100: 109.094472 },
] as const satisfies readonly { grade: number; at40: number; at100: number | undefined }[];
