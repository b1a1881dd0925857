import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { cutsWriting } from '../../../src/sheets/cutlist/cutsWriting';
import { gatherCuts } from '../../../src/sheets/cutlist/gatherCuts';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { cutsOptions } from './demoWorkbook';
import type { WrittenWeek } from './judgeWeek';
import type { RandomWeek } from './randomWeek';

/** Plans a random week and writes it; undefined where nothing can be cut. */
export async function writeRandomWeek({ sheets, settings }: RandomWeek): Promise<WrittenWeek | undefined> {
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Jobs', address: 'A2' });
  const gathered = await gatherCuts(workbook, 'Rack', settings, '2026-10-05');
  const plans = await planHoses(gathered, solveCutPlan, () => {}, { aborted: false });
  if (plans.every(({ reels }) => reels.length === 0)) return undefined;
  const writing = await cutsWriting(workbook, gathered, plans, cutsOptions);
  await workbook.write(writing.changes);
  const rows = async (sheet: string) => (await workbook.used(sheet))!.values;
  return { cutList: await rows(writing.cutList), rackAfter: await rows(writing.rackAfter), pieces: await rows('Pieces') };
}
