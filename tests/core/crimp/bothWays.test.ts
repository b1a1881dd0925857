import { seededUniform } from '../../../bench/seededUniform';
import { measureCrimp } from '../../../src/core/crimp/crimpMeasure';
import { judgeCrimp } from '../../../src/core/crimp/crimpVerdict';
import { nextDial } from '../../../src/core/crimp/nextDial';
import { cutLength } from '../../../src/core/length/cutLength';
import { TradeError } from '../../../src/core/tradeError';
import type { Decimal } from '../../../src/core/units/decimal';
import { decimalOfCell } from '../../../src/core/units/scaledDecimal';
import { pick, slowly, wholeBetween, type Uniform } from '../units/cellNumbers';

/** `npm run bench -- exact` takes more. */
const CASES = Number(process.env.EXACT_CASES ?? 20_000);
const SEED = Number(process.env.EXACT_SEED ?? 20261130);

/** Answers that must be met often, each of them. */
const KINDS = [
  'IN SPEC',
  'TIGHT',
  'LOOSE',
  'UNSURE',
  'OVAL',
  'reading ',
  'dial would move by half',
  'dial would move by',
  'dial would be',
];

/** A crimp in whole units of the caliper's last digit, its mean on a limit or at most two units of one reading beside it. */
interface Crimp {
  readonly readings: readonly number[];
  readonly target: number;
  readonly tolerance: number;
  readonly uncertainty: number;
  readonly maxSpread: number;
  readonly step: number;
  readonly dial: number;
}

function crimpInUnits(uniform: Uniform): Crimp {
  const target = wholeBetween(uniform, 1200, 90_000);
  const tolerance = wholeBetween(uniform, Math.ceil(target / 1900), Math.floor(target / 11));
  const near = wholeBetween(uniform, 1, tolerance);
  const off =
    pick(uniform, [tolerance, tolerance, tolerance + near, tolerance - near, 0, 2 * tolerance]) * pick(uniform, [1, -1]);
  const readings = Array.from({ length: wholeBetween(uniform, 1, 4) }, () => {
    const apart = wholeBetween(uniform, 0, Math.floor(uniform() < 0.02 ? target / 3 : tolerance));
    return [target + off + apart, target + off - apart];
  }).flat();
  if (uniform() < 0.3) readings.push(target + off);
  readings[0]! += wholeBetween(uniform, -2, 2);
  const spread = Math.max(...readings) - Math.min(...readings);
  return {
    readings,
    target,
    tolerance,
    uncertainty: near + wholeBetween(uniform, -1, 1),
    maxSpread: Math.max(0, spread + wholeBetween(uniform, -1, 1)),
    // So that the move lies on half a digit as often as beside it.
    step: pick(uniform, [off || 5, 2 * off || 5, Math.ceil(tolerance / 3), 1]) * pick(uniform, [1, -1]),
    dial: pick(uniform, [1, 500, 999]) + wholeBetween(uniform, -5, 5),
  };
}

/** The same crimp as cells hold it: in millimetres or inches, typed, or computed with the noise of binary fractions. */
function inCells(uniform: Uniform, crimp: Crimp): Crimp {
  const unit = pick(uniform, [0.01, 0.001, 0.0005, 1, 0.0001]);
  const cell = pick<(value: number) => number>(uniform, [
    value => Number((value * unit).toPrecision(12)),
    value => Number((value * unit).toPrecision(12)),
    value => value * unit,
    value => value * unit * 1.1 - value * unit * 0.1,
  ]);
  const { dial, readings, ...sizes } = crimp;
  const inUnit = Object.fromEntries(Object.entries(sizes).map(([name, value]) => [name, cell(value)]));
  return { ...(inUnit as unknown as Crimp), readings: readings.map(cell), dial };
}

function orSentence(call: () => unknown): string {
  try {
    return String(call());
  } catch (error) {
    if (error instanceof TradeError) return error.message;
    throw error;
  }
}

/** All that functions say of a crimp, with its cells read in one of the two ways. */
function answers(crimp: Crimp, read: (cell: number) => Decimal): string[] {
  const [target, tolerance, step, dial] = [read(crimp.target), read(crimp.tolerance), read(crimp.step), read(crimp.dial)];
  const rule = { tolerance, uncertainty: read(crimp.uncertainty), maxSpread: read(crimp.maxSpread) };
  const limits = { lowest: read(1), highest: read(999), largestMove: read(40) };
  const [cutOffA, cutOffB] = [read(crimp.readings[0]! / 2), read(crimp.uncertainty)];
  const length = orSentence(() => cutLength({ overall: target, cutOffA, cutOffB, allowance: tolerance }));
  try {
    const measure = measureCrimp({ readings: crimp.readings.map(read), target, tolerance });
    const { mean, deviation, spread } = measure;
    return [
      judgeCrimp(measure, { tolerance }),
      judgeCrimp(measure, rule),
      String([mean, deviation, spread].map(value => value.toNumber() + 0)),
      orSentence(() => nextDial(measure, tolerance, { dial, step, ...limits })),
      length,
    ];
  } catch (error) {
    return [(error as TradeError).message, length];
  }
}

/** The verdict in whole numbers, without any of our arithmetic. */
function wholeVerdict({ readings, target, tolerance }: Crimp): string {
  const off = readings.reduce((sum, reading) => sum + reading - target, 0);
  if (Math.abs(off) <= tolerance * readings.length) return 'IN SPEC';
  return off < 0 ? 'TIGHT' : 'LOOSE';
}

test(`crimps at and beside the limits are judged alike in both ways, in ${CASES} cases from seed ${SEED}`, () => {
  const uniform = seededUniform(SEED);
  const seen = new Map<string, number>();
  for (let index = 0; index < CASES; index += 1) {
    const inUnits = crimpInUnits(uniform);
    const crimp = inCells(uniform, inUnits);
    const [fast, slow] = [answers(crimp, decimalOfCell), answers(crimp, slowly)];
    const [verdict] = fast;
    const isRight = verdict!.startsWith('reading') || verdict === wholeVerdict(inUnits);
    if (!isRight || fast.join('; ') !== slow.join('; '))
      throw new Error(`case ${index} of seed ${SEED}: ${JSON.stringify({ crimp, fast, slow, whole: wholeVerdict(inUnits) })}`);
    for (const answer of fast) {
      const kind = KINDS.find(start => answer.startsWith(start));
      if (kind) seen.set(kind, (seen.get(kind) ?? 0) + 1);
    }
  }
  // Each verdict and each refusal is met often.
  expect(KINDS.filter(kind => (seen.get(kind) ?? 0) < CASES / 1000)).toEqual([]);
});
