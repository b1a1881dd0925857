import { called } from '../../host/customFunctions';
import * as crimps from '../../../src/functions/crimp';
import * as flow from '../../../src/functions/hydraulics';
import * as lengths from '../../../src/functions/length';
import { sellPrice } from '../../../src/functions/price';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { compareAll, isSame } from './otherEngine';
import { randomSheet, type Random, type RandomFunction } from './randomSheets';

const one = (value: unknown): any[][] => [[value]];
const row = (...values: unknown[]): any[][] => [values];

const ODD_LENGTHS = [null, 0, -5, 'abc', '27 1/2', '12,5', '1,250', ' 40 ', 45_000, 2e9, true] as const;
const length = (random: Random, from: number, to: number, percent = 12) =>
  random.oddly<string | number | boolean | null>(percent, () => random.number(from, to, random.pick([0, 1, 2])), ...ODD_LENGTHS);

/** Readings whose mean lies exactly on a limit in a quarter of the crimps; others far off, blank, or with a slipped decimal point. */
function crimp(random: Random): (string | number | null)[] {
  const target = random.oddly<string | number | null>(4, () => random.number(15, 45, 2), null, 0, '24,9', 'x');
  const tolerance = random.oddly<string | number | null>(5, () => random.pick([0.1, 0.12, 0.15, 0.2]), null, 0.001, 6, '0,15');
  const centre = typeof target === 'number' && target > 0 ? target : 25;
  const half = typeof tolerance === 'number' ? tolerance : 0.15;
  const off = random.next() < 0.25 ? random.pick([half, -half]) : random.number(-0.4, 0.4, 3);
  const spread = random.pick([0, 0.01, 0.02, 0.05, 0.2]);
  const readings: (string | number | null)[] = [spread, -spread, 2 * spread, -2 * spread].map(by =>
    Number((centre + off + by).toFixed(3)),
  );
  if (random.next() < 0.05) readings.fill(null);
  else if (random.next() < 0.05) readings.fill(0);
  else if (random.next() < 0.12)
    readings[random.pick([0, 1, 2, 3])] = random.pick([
      null,
      0,
      249,
      '24,85',
      'o',
      Number((centre * 1.03).toFixed(2)),
      centre * 1.25,
    ]);
  return [...readings, target, tolerance];
}

const FUNCTIONS: readonly RandomFunction[] = [
  {
    id: 'CUTLENGTH',
    inputs: r => [
      length(r, 60, 3000),
      length(r, -10, 80),
      length(r, -10, 80),
      r.oddly<string | number | null>(50, () => r.number(-5, 20), null, null, 'x'),
    ],
    arguments: r => [`A${r}`, `B${r}`, `C${r}`, `D${r}`],
    ours: ([a, b, c, d]) => lengths.cutLength(one(a), one(b), one(c), one(d)),
  },
  {
    id: 'OVERALLLENGTH',
    inputs: r => [length(r, 1, 3000), length(r, -10, 80), length(r, -10, 80)],
    arguments: r => [`A${r}`, `B${r}`, `$C${r}`],
    ours: ([a, b, c]) => lengths.overallLength(one(a), one(b), one(c)),
  },
  ...(['mm', 'in'] as const).flatMap(unit =>
    (['DIN 20066', 'SAE J517'] as const).map((rule): RandomFunction => ({
      id: 'LENGTHLIMITS',
      inputs: r => {
        const edges = unit === 'mm' ? [630, 630.1, 1250, 2500, 8000, 304.8, 457.2, 914.4, 3, 2] : [12, 18, 36, 36.1, 0.1, 0.125];
        const lengthOf = r.oddly<string | number | boolean | null>(
          30,
          () => length(r, 0.1, unit === 'mm' ? 12_000 : 500, 10),
          ...edges,
        );
        const bores = unit === 'mm' ? [6.4, 25.4, 25.5, 50.8, 50.9, 12.7] : [0.25, 1, 1.01, 2, 2.01];
        return [lengthOf, r.oddly<string | number | null>(8, () => r.pick(bores), null, 0, -1, '3/8', 'x', 40_000)];
      },
      arguments: r => [`A${r}`, `B${r}`, `"${unit}"`, `"${rule}"`],
      ours: ([a, b]) => lengths.lengthLimits(one(a), one(b), one(unit), one(rule)),
    })),
  ),
  {
    id: 'LENGTHCHANGE',
    inputs: r => [
      length(r, 10, 3000),
      r.oddly<string | number | null>(40, () => r.number(0, 0.1, 3), null, 1, -0.1, '0,04'),
      r.oddly<string | number | null>(40, () => r.number(0, 0.1, 3), null, 4),
    ],
    arguments: r => [`A${r}`, `B${r}`, `C${r}`],
    ours: ([a, b, c]) => lengths.lengthChange(one(a), one(b), one(c)),
  },
  {
    id: 'CRIMPCHECK',
    inputs: r => [
      ...crimp(r),
      r.oddly<string | number | null>(50, () => r.number(0, 0.08, 2), null, 0.05, -1),
      r.oddly<string | number | null>(50, () => r.number(0, 0.3, 2), null, 0.05),
    ],
    arguments: r => [`A${r}:D${r}`, `E${r}`, `F${r}`, `G${r}`, `H${r}`],
    ours: ([a, b, c, d, e, f, g, h]) => crimps.crimpCheck(row(a, b, c, d), one(e), one(f), one(g), one(h)),
  },
  {
    id: 'CRIMPDETAIL',
    inputs: r => [...crimp(r), r.oddly<string | number | null>(50, () => r.number(0, 0.3, 2), null)],
    arguments: r => [`A${r}:D${r}`, `E${r}`, `F${r}`, `G${r}`],
    ours: ([a, b, c, d, e, f, g]) => crimps.crimpDetail(row(a, b, c, d), one(e), one(f), one(g)),
  },
  {
    id: 'NEXTDIAL',
    inputs: r => [
      ...crimp(r),
      r.oddly<string | number | null>(8, () => r.number(200, 500, 0), null, 'x', 312.5),
      r.oddly<string | number | null>(8, () => r.pick([0.02, 0.04, -0.05, 0.01, 0.4]), 0, null, 'y'),
      r.oddly<string | number | null>(40, () => r.number(200, 330, 0), null),
      r.oddly<string | number | null>(40, () => r.number(330, 500, 0), null),
      r.oddly<string | number | null>(40, () => r.number(2, 30, 0), null, -3),
    ],
    arguments: r => [`G${r}`, `A${r}:D${r}`, `E${r}`, `F${r}`, `H${r}`, `I${r}`, `J${r}`, `K${r}`],
    ours: ([a, b, c, d, e, f, g, h, i, j, k]) =>
      crimps.nextDial(one(g), row(a, b, c, d), one(e), one(f), one(h), one(i), one(j), one(k)),
  },
  {
    id: 'CONFORMITY',
    inputs: r => {
      const target = r.number(15, 45, 2);
      return [
        r.oddly<string | number | null>(6, () => Number((target + r.number(-0.4, 0.4, 3)).toFixed(3)), null, 'x', -1),
        target,
        r.pick([0.1, 0.2, 0.15]),
        r.oddly<number | null>(5, () => r.number(0.02, 0.2, 2), null, 0),
      ];
    },
    arguments: r => [`A${r}`, `B${r}`, `C${r}`, `D${r}`],
    ours: ([a, b, c, d]) => crimps.conformity(one(a), one(b), one(c), one(d)),
  },
  {
    id: 'CALIBRATIONTURNS',
    inputs: r => [
      r.oddly<string | number | null>(10, () => r.number(-0.5, 0.5, 3), null, 'x', 40_000),
      r.oddly<string | number | null>(10, () => r.number(0.1, 1, 2), null, 0, -0.4),
    ],
    arguments: r => [`A${r}`, `B${r}`],
    ours: ([a, b]) => crimps.calibrationTurns(one(a), one(b)),
  },
  {
    id: 'SELLPRICE',
    inputs: r => {
      const [margin, step] = [
        r.pick([0.2, 0.25, 0.4, 0.3, 0, -0.1, 1]),
        r.oddly<number | null>(25, () => r.pick([0.05, 0.1, 0.5, 1]), null, 0, -1),
      ];
      // A price that is a multiple of the step already.
      const onStep = Number((r.number(1, 200, 0) * (step || 0.5) * (1 - margin)).toFixed(6));
      const cost = r.oddly<string | number | null>(
        10,
        () => (r.next() < 0.4 ? Math.abs(onStep) : r.number(0, 300, 2)),
        null,
        -3,
        '12,5',
        'x',
      );
      return [
        cost,
        r.oddly<string | number | null>(5, () => margin, null, 'x'),
        step,
        r.oddly<number | null>(50, () => r.number(0, 60, 2), null, -2),
      ];
    },
    arguments: r => [`A${r}`, `B${r}`, `C${r}`, `D${r}`],
    ours: ([a, b, c, d]) => sellPrice(one(a), one(b), one(c), one(d)),
  },
  ...(['metric', 'US'] as const).flatMap((unit): RandomFunction[] => [
    {
      id: 'VELOCITY',
      inputs: r => [
        r.oddly<string | number | null>(8, () => r.number(0, 400, 1), null, -1, '12,5', 'x'),
        r.oddly<string | number | null>(8, () => r.number(0.2, 51, 2), null, 0, 40_000),
      ],
      arguments: r => [`A${r}`, `B${r}`, `"${unit}"`],
      ours: ([a, b]) => flow.velocity(one(a), one(b), one(unit)),
    },
    {
      id: 'BORESIZE',
      inputs: r => [
        r.oddly<string | number | null>(8, () => r.number(0.1, 400, 1), null, 0, 'x'),
        r.oddly<string | number | null>(8, () => r.number(0.2, 25, 2), null, 0),
      ],
      arguments: r => [`A${r}`, `B${r}`, `"${unit}"`],
      ours: ([a, b]) => flow.boreSize(one(a), one(b), one(unit)),
    },
  ]),
  {
    id: 'ROUTELENGTH',
    inputs: r => [
      r.oddly<string | number | null>(10, () => r.number(0, 900, 0), null, -1, 'x'),
      length(r, 0, 900, 20),
      r.oddly<number | null>(6, () => r.number(0, 300, 0), null, -1, 0),
      r.oddly<number | null>(6, () => r.pick([0, 45, 90, 180]), null, -90),
      r.oddly<string | number | null>(50, () => r.number(10, 50, 1), null, 0),
    ],
    arguments: r => [`A${r}:B${r}`, `C${r}`, `D${r}`, `E${r}`],
    ours: ([a, b, c, d, e]) => lengths.routeLength(row(a, b), one(c), one(d), one(e)),
  },
];

/** Rows of each function. */
const ROWS = 1000;

test.each(FUNCTIONS.map((each, index) => [`${each.id} ${each.arguments(1).slice(-2).join(' ')}`, each, index] as const))(
  'a thousand random rows: %s agrees in another engine',
  async (_, each, index) => {
    called(() => []);
    const sheet = randomSheet(each, 11 + index, ROWS);
    const { workbook } = fakeWorkbook({ Rows: sheet }, { sheet: 'Rows', address: 'A1' });
    const source = await readCopySource(workbook);
    const { copy, kept } = planCopy(source, {
      sheets: ['Rows'],
      kind: 'formulas',
      withCosts: true,
      withParts: true,
      target: 'file',
      today: '2026-11-29',
    });
    const compared = compareAll(copy);
    const wrong = compared.filter(({ ours, theirs }) => !isSame(ours, theirs));
    expect(wrong.slice(0, 5)).toEqual([]);
    // Rows that stay values are those with a mark of inches or two readings of a comma, not more.
    const keptRows = kept.reduce((sum, { address }) => sum + rowsOf(address), 0);
    expect(keptRows).toBeLessThan(ROWS / 10);
    const values = compared.filter(({ ours }) => typeof ours !== 'object' && ours !== '');
    expect(values.length).toBeGreaterThan(ROWS / 4);
    expect(compared.filter(({ ours }) => typeof ours === 'object').length).toBeGreaterThan(10);
  },
);

function rowsOf(address: string): number {
  const [first, last = first] = address.split(':').map(part => Number(part.replace(/\D/g, '')));
  return last! - first! + 1;
}
