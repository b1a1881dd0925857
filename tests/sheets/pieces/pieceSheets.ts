import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import type { LengthUnit } from '../../../src/core/units/lengthUnit';
import { readJobs, type Jobs } from '../../../src/sheets/jobs/readJobs';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { planPieces } from '../../../src/sheets/pieces/planPieces';
import type { PlanPiecesOptions } from '../../../src/sheets/pieces/piecePlanner';
import type { ReelOfPieces } from '../../../src/sheets/pieces/pieceCuts';
import type { Workbook } from '../../../src/workbook/workbook';
import type { FakeCell } from '../../workbook/fakeWorkbook';

/** Invented jobs of an invented workshop, in two shapes: never crimp from them. */
export const METRIC: readonly (readonly FakeCell[])[] = [
  [
    'Line',
    'Wanted for',
    'Order',
    'Assembly no.',
    'Hose',
    'Bore (mm)',
    'Coupling A',
    'Coupling B',
    'Quantity',
    'Overall length (mm)',
    'Cut length (mm)',
    'Working pressure (bar)',
    'Die A',
    'Dial A',
    'Crimp diameter A (mm)',
    'Tolerance A (mm)',
    'Die B',
    'Dial B',
    'Crimp diameter B (mm)',
    'Tolerance B (mm)',
    'Status',
  ],
  [
    1,
    'Topper lift',
    'B-41',
    'H3-117',
    'Larch DN 12',
    12.7,
    'cone S straight',
    'cone S 90°',
    4,
    1250,
    1168.5,
    275,
    'D26',
    300,
    27.35,
    0.12,
    'D26',
    301,
    27.334,
    0.12,
    '',
  ],
  [
    2,
    'Share steering',
    'B-41',
    '',
    'Larch DN 8',
    7.9,
    'cone L straight',
    'cone L 90°',
    3,
    640,
    570,
    215,
    'D18',
    210,
    19.45,
    0.12,
    'D18',
    210,
    19.45,
    0.12,
    '',
  ],
  [
    3,
    'Turbine drive',
    'B-42',
    '',
    'Rowan DN 25',
    25.4,
    'flange straight',
    'flange 90°',
    1,
    2180,
    2046,
    350,
    'D39',
    500,
    44.2,
    0.15,
    'D39',
    505,
    44.3,
    0.15,
    'rush',
  ],
];

/** Inches, other words, another order of columns, no order number, a title block. */
export const INCH: readonly (readonly FakeCell[])[] = [
  ['Hoses of Tuesday', '', '', '', '', '', '', '', ''],
  [],
  ['Qty', 'Hose type', 'End fitting 1', 'End fitting 2', 'Cut to (in)', 'OAL (in)', 'Description', 'Bore (in)', 'Item'],
  [2, 'Birch 3/8', 'JIC straight', 'JIC 90°', 24.5, 27.25, 'Loader tilt', 0.375, 'A'],
  [5, 'Birch 1/2', 'ORFS straight', 'ORFS straight', 36, 38.5, 'Loader boom', 0.5, 'B'],
];

export const NOW = '2026-10-05 07:12';

export const options = (unit: LengthUnit, more: Partial<PlanPiecesOptions> = {}): PlanPiecesOptions => ({
  catalogue: undefined,
  unit,
  machine: 'Machine at the gate',
  proofFactor: new Decimal(2),
  useBy: '2032-10',
  pressureUnit: unit === 'mm' ? 'bar' : 'psi',
  prefix: '41/',
  now: NOW,
  ...more,
});

export const jobsOf = (workbook: Workbook, unit: LengthUnit, sheet = 'Jobs', row = 1): Promise<Jobs> => {
  const step = { value: new Decimal(unit === 'mm' ? 1 : '0.0625'), unit: measureUnit('length', unit)! };
  const block = { row, column: 0, rows: 1, columns: 1 };
  return readJobs(workbook, { step, whateverStatus: true }, { sheet, block, isChoice: false });
};

/** Every piece of every line, two to a reel, each hose with lots of its own. */
export function reelsFor({ lines }: Jobs, unit: LengthUnit, perReel = 2): readonly ReelOfPieces[] {
  const reels: { rack: ReelOfPieces['rack']; cuts: ReelOfPieces['cuts'][number][] }[] = [];
  for (const line of lines) {
    for (let piece = 1; piece <= (line.quantity ?? 0); piece += 1) {
      const nth = reels.length + 1;
      const isFull = (piece - 1) % perReel === 0;
      if (isFull) reels.push({ rack: { lot: `L${70 + nth}`, place: `A${nth}`, reel: `${nth}` }, cuts: [] });
      const length = line.cutLength!.value.toDecimalPlaces(unit === 'mm' ? 0 : 4);
      reels.at(-1)!.cuts.push({ length, line: { row: line.row, line: line.line }, piece });
    }
  }
  return reels;
}

/** Reads the jobs, plans every piece of them, writes. */
export async function writeAll(workbook: Workbook, unit: LengthUnit, more: Partial<PlanPiecesOptions> = {}, row = 1) {
  const jobs = await jobsOf(workbook, unit, 'Jobs', row);
  const reels = reelsFor(jobs, unit);
  const plan = planPieces(await pieceBook(workbook), reels, jobs.lines, options(unit, more));
  await workbook.write(plan.writing.changes);
  return { jobs, reels, plan };
}
