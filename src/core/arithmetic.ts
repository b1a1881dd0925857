/** Functions of Math, named once, since a script host may make every look at a global slow. */
export const { abs, ceil, floor, log2, max, min, round } = Math;
