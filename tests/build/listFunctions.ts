/** One list-taking function: columns that belong together, values for the whole call, and what its answer starts with. */
export interface ListFunction {
  readonly id: string;
  /** Blocks of equal height, by parameter. */
  readonly lists: Readonly<Record<string, readonly (readonly unknown[])[]>>;
  readonly whole: Readonly<Record<string, unknown>>;
  readonly header: readonly unknown[];
}

/** A column of cells. */
export const col = (...cells: unknown[]) => cells.map(cell => [cell]);
const names = col('A', 'A', 'B', 'B', 'C', 'C');

/** The list-taking functions, with every argument they have and a value that suits. */
export const listFunctions: readonly ListFunction[] = [
  {
    id: 'CRIMPCAUSE',
    lists: {
      combination: names,
      deviation: col(0.1, 0.11, 0.1, 0.09, 0.1, 0.1),
      die: col(...Array<string>(6).fill('D23')),
      when: col(1, 2, 3, 4, 5, 6),
    },
    whole: { tolerance: 0.05, confidence: 0.9, actionShare: 0.4 },
    header: ['Combination', 'Crimps', 'Mean deviation', 'Correction', 'Finding', 'Since', 'Low', 'High'],
  },
  {
    id: 'DIALRESPONSE',
    lists: { combination: names, dial: col(300, 310, 300, 320, 300, 330), mean: col(27.5, 27.4, 30, 29.8, 40.01, 39.7) },
    whole: {},
    // Slope by hand: (.5 + 2 + 4.65) ÷ (50 + 200 + 450).
    header: [expect.closeTo(7.15 / 700, 9), expect.any(Number), expect.any(Number), 6],
  },
  {
    id: 'CONTROLLIMITS',
    lists: {
      subgroups: [
        [27.5, 27.6],
        [27.4, 27.5],
        [27.5, 27.5],
      ],
    },
    whole: {},
    header: ['Chart', 'Lower', 'Centre', 'Upper'],
  },
  {
    id: 'CAPABILITY',
    lists: {
      subgroups: [
        [27.5, 27.6],
        [27.4, 27.5],
        [27.5, 27.5],
      ],
    },
    whole: { lower: 27.2, upper: 27.8, target: 27.5 },
    header: ['Index', 'Value', 'Low', 'High'],
  },
  {
    id: 'GAUGESTUDY',
    lists: {
      part: col(1, 1, 1, 1, 2, 2, 2, 2),
      operator: col('Kim', 'Kim', 'Lee', 'Lee', 'Kim', 'Kim', 'Lee', 'Lee'),
      reading: col(1, 2, 1, 2, 5, 6, 5, 6),
    },
    whole: { tolerance: 10 },
    header: ['Source', 'Variance', 'Share of study', 'Share of tolerance'],
  },
  {
    id: 'GAUGECHECK',
    lists: { readings: col(25.01, 24.99, 25.01, 25, 25.02, 25, 24.99, 25.01, 25, 25) },
    whole: { reference: 25, tolerance: 0.24 },
    // Bias by hand; s, Cg and Cgk are held to their check values in tests/functions/gauges.test.ts.
    header: [expect.closeTo(0.003, 9), expect.any(Number), expect.any(Number), expect.any(Number)],
  },
  {
    id: 'CUTPLAN',
    lists: { lengths: col(1250, 840), quantities: col(3, 2) },
    whole: { stockLengths: 6000, stockQuantities: 2, kerf: 3, keep: 500, squaring: 10, seconds: 2, unit: 'mm', handling: 250 },
    header: ['Stock', 'Times', 'Cuts', 'Used', 'Left'],
  },
  {
    id: 'ROUTELENGTH',
    lists: { bendRadius: col(100, 100), bendAngle: col(90, 180) },
    whole: { straights: 50, outsideDiameter: 20 },
    header: [expect.closeTo(50 + 110 * 1.5 * Math.PI, 9)],
  },
];
