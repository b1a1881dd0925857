import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { gatherCuts } from '../../../src/sheets/cutlist/gatherCuts';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import { cutListsOf } from '../../../src/sheets/cutlist/readCutList';
import { cutsWriting } from '../../../src/sheets/cutlist/cutsWriting';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { cutsOptions, demoSheets } from './demoWorkbook';
import { USUAL_SETTINGS } from './usualSettings';

test('a cut list that was written is read back: every cut of every reel, and in another unit exactly (25.4 mm, NIST SP 811)', async () => {
  const { workbook } = fakeWorkbook(demoSheets, { sheet: 'Jobs', address: 'A2' });
  const gathered = await gatherCuts(workbook, 'Rack', USUAL_SETTINGS, '2026-10-05');
  const plans = await planHoses(gathered, solveCutPlan, () => {}, { aborted: false });
  await workbook.write((await cutsWriting(workbook, gathered, plans, cutsOptions)).changes);
  const planned = plans.flatMap(({ reels }) =>
    reels.flatMap(({ rack, cuts }) => cuts.map(cut => [rack.hose, cut.line.line, `${cut.length}`])),
  );
  const [list] = await cutListsOf(workbook, 'mm', 'Jobs');
  expect(list!.cuts.map(({ hose, line, length }) => [hose, line, `${length}`])).toEqual(planned);
  const [inches] = await cutListsOf(workbook, 'in', 'Jobs');
  expect(inches!.cuts[0]!.length.times('25.4').minus(list!.cuts[0]!.length).abs().lt('1e-30')).toBe(true);
  expect(await cutListsOf(workbook, 'mm', 'Rack')).toEqual([]);
});
