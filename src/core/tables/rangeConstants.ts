/**
 * Mean (d2) and standard deviation (d3) of the range of n values from a normal distribution with standard deviation 1.
 * Source: ISO 7870-2:2013 defines them; the digits are computed by integration (the tests integrate again). A2 = 3/(d2·√n), D3 = 1 − 3·d3/d2 (at
 * least 0) and D4 = 1 + 3·d3/d2 follow from them.
 */
export const RANGE_CONSTANTS = [
  { n: 2, d2: 1.12837917, d3: 0.85250247 },
  { n: 3, d2: 1.69256875, d3: 0.888368 },
  { n: 4, d2: 2.05875075, d3: 0.8798082 },
  { n: 5, d2: 2.32592895, d3: 0.86408194 },
  { n: 6, d2: 2.53441272, d3: 0.84803969 },
  { n: 7, d2: 2.70435675, d3: 0.83320534 },
  { n: 8, d2: 2.84720061, d3: 0.81983149 },
  { n: 9, d2: 2.97002632, d3: 0.80783427 },
  { n: 10, d2: 3.07750546, d3: 0.79705067 },
] as const satisfies readonly { n: number; d2: number; d3: number }[];
