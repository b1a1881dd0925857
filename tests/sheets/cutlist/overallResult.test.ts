import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { Decimal } from '../../../src/core/units/decimal';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';
import { hoseJobs } from '../../../src/sheets/cutlist/hoseJob';
import { overallResult } from '../../../src/sheets/cutlist/overallResult';
import { planHose, type HosePlan } from '../../../src/sheets/cutlist/planHose';
import { comparison } from '../../../src/sheets/cutlist/planText';
import type { RackRow } from '../../../src/sheets/rack/rackRow';

const d = (value: number) => new Decimal(value);
const settings: CutSettings = {
  unit: 'mm',
  step: d(1),
  kerf: d(0),
  squaring: undefined,
  keep: d(500),
  ageLimitMonths: undefined,
  isOldestFirst: false,
};
const stock = (length: number, row: number): RackRow => ({
  row,
  hose: 'Larch',
  length: d(length),
  quantity: 1,
  place: '',
  lot: '',
  made: '',
});
const line = (row: number, cutLength: number, quantity: number) => ({
  ...{ row, line: String(row), label: '', hose: 'Larch', quantity },
  ...{ wanted: d(cutLength), cutLength: d(cutLength) },
});

async function planned(lines: readonly ReturnType<typeof line>[], rack: readonly RackRow[]): Promise<HosePlan> {
  const [job] = hoseJobs(lines, rack, settings, '2026-10-05');
  return planHose(job!, settings, d(20_000), solveCutPlan);
}

test('what a plan comes to: pieces planned, pieces that wait and why, what is bought, what is left', async () => {
  // 2 × 1000 from 3000: 1000 goes back. The third of line 2 finds no hose.
  const plan = await planned([line(1, 1000, 2), line(2, 3500, 1)], [stock(3000, 2)]);
  expect(overallResult([plan], 'mm')).toEqual([
    '2 pieces planned from 1 piece of stock. No plan is better.',
    '1 piece waits: Larch: longer than any piece in the rack: line 2: 1 × 3500 mm.',
    'To buy: 1 reel of Larch, 20000 mm each.',
    'Left: 1.00 m in 1 end back to the rack; 0.00 m becomes scrap.',
  ]);
});

test('the comparison says in words what its table says in numbers', async () => {
  // Both go on the reel of 3400: 100 is left. In sheet order 400 comes off the reel of 3000 and 2900 off that of 3400: 2600 and 500 go back.
  const as = { ...settings, handling: d(100) };
  const [job] = hoseJobs([line(1, 400, 1), line(2, 2900, 1)], [stock(3000, 2), stock(3400, 3)], as, '2026-10-05');
  const plan = await planHose(job!, as, undefined, solveCutPlan);
  expect(comparison(plan, 'mm')).toBe(
    'With this plan, and in brackets in the order of the sheet: 1 piece of stock fetched (2); 0.10 m becomes scrap (0.00 m); 0.00 m goes back to the rack (3.10 m).',
  );
});

test('where the order of the sheet comes to the same, that is said', async () => {
  expect(comparison(await planned([line(1, 1000, 1)], [stock(3000, 2)]), 'mm')).toBe(
    'In the order of the sheet it comes to the same.',
  );
});
