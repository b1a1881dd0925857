/** An argument that is read row by row: what stands in one good row. */
interface RowArgument {
  readonly row: readonly unknown[];
}

/** An argument that takes one value for the whole call. */
interface WholeArgument {
  readonly whole: unknown;
}

export type Argument = RowArgument | WholeArgument;

/** How a worksheet function with rows is called well. */
export interface RowFunction {
  readonly id: string;
  /** Columns of the result. */
  readonly width: number;
  /** Argument that tells a row that is not filled in: the readings, or else the first that is read by rows. */
  readonly key: string;
  /** By the parameter's name, in the order of the contract. */
  readonly arguments: Readonly<Record<string, Argument>>;
}

const row = (...cells: unknown[]): RowArgument => ({ row: cells });
const whole = (value: unknown): WholeArgument => ({ whole: value });

/** The row-wise functions but for those of the catalogue, with every argument they have and a value that suits. */
export const rowFunctions: readonly RowFunction[] = [
  {
    id: 'CUTLENGTH',
    width: 1,
    key: 'overall',
    arguments: { overall: row(1200), cutOffA: row(48.5), cutOffB: row(52), allowance: row(2) },
  },
  {
    id: 'OVERALLLENGTH',
    width: 1,
    key: 'cut',
    arguments: { cut: row(1100), cutOffA: row(48.5), cutOffB: row(52), allowance: row(2) },
  },
  {
    id: 'LENGTHLIMITS',
    width: 2,
    key: 'overall',
    arguments: { overall: row(1000), bore: row(12.7), unit: whole('mm'), rule: whole('DIN 20066') },
  },
  {
    id: 'LENGTHCHANGE',
    width: 2,
    key: 'length',
    arguments: { length: row(1000), shorten: whole(0.03), lengthen: whole(0.01) },
  },
  {
    id: 'CRIMPCHECK',
    width: 1,
    key: 'readings',
    arguments: {
      readings: row(27.4, 27.6),
      target: row(27.5),
      tolerance: row(0.1),
      uncertainty: whole(0.02),
      maxSpread: whole(1),
    },
  },
  {
    id: 'CRIMPDETAIL',
    width: 4,
    key: 'readings',
    arguments: { readings: row(27.4, 27.5, 27.5, 27.6), target: row(27.5), tolerance: row(0.1), maxSpread: whole(1) },
  },
  {
    id: 'CONFORMITY',
    width: 1,
    key: 'mean',
    arguments: { mean: row(27.55), target: row(27.5), tolerance: row(0.1), uncertainty: whole(0.04) },
  },
  {
    id: 'NEXTDIAL',
    width: 1,
    key: 'readings',
    arguments: {
      dial: row(412),
      readings: row(27.7, 27.8),
      target: row(27.5),
      tolerance: row(0.1),
      step: row(0.05),
      lowest: whole(100),
      highest: whole(900),
      largestMove: whole(50),
    },
  },
  { id: 'CALIBRATIONTURNS', width: 1, key: 'deviation', arguments: { deviation: row(0.09), perTurn: row(0.6) } },
  { id: 'RUNSIGNALS', width: 1, key: 'values', arguments: { values: row(10.7), centre: whole(10), sigma: whole(0.2) } },
  {
    id: 'SELLPRICE',
    width: 1,
    key: 'cost',
    arguments: { cost: row(30), margin: row(0.4), roundTo: whole(0.5), minimum: whole(20) },
  },
  { id: 'VELOCITY', width: 1, key: 'flow', arguments: { flow: row(60), bore: row(20), unit: whole('metric') } },
  { id: 'BORESIZE', width: 1, key: 'flow', arguments: { flow: row(60), velocity: row(5), unit: whole('metric') } },
  {
    id: 'PRESSUREDROP',
    width: 1,
    key: 'flow',
    arguments: {
      flow: row(60),
      bore: row(20),
      length: row(10),
      viscosity: row(46),
      unit: whole('metric'),
      density: whole(870),
      roughness: whole(0.01),
    },
  },
  {
    id: 'VISCOSITY',
    width: 1,
    key: 'temperature',
    arguments: { grade: whole(46), temperature: row(60), unit: whole('metric') },
  },
];
