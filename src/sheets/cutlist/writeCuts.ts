import type { Workbook } from '../../workbook/workbook';
import { cutListSheet } from './cutListSheet';
import { freeSheetName } from '../print/freeSheetName';
import type { Gathered } from './gatherCuts';
import type { HosePlan } from './planHose';
import { summarySentence } from './planText';
import { rackAfterSheet } from './rackAfterSheet';

/** Writes the cut list and the rack afterwards as new sheets, in one batch; gives their names. */
export async function writeCuts(
  workbook: Workbook,
  gathered: Gathered,
  plans: readonly HosePlan[],
  today: string,
): Promise<readonly [cutList: string, rackAfter: string]> {
  const { settings, rack, picked, rackSheet, lineCount, lineProblems } = gathered;
  const taken = await workbook.sheets();
  const names = [freeSheetName('Cut list', taken, today), freeSheetName('Rack after', taken, today)] as const;
  const reels = plans.flatMap(plan => plan.reels);
  const source = `From sheet ${picked.sheet} (${lineCount} lines) and rack ${rackSheet}, ${today}`;
  const summaries = plans.flatMap(plan => [summarySentence(plan, settings.unit), ...plan.job.warnings]);
  const leftOut = lineProblems.map(({ row, sentence }) => `Left out: row ${row} of ${picked.sheet}: ${sentence}.`);
  await workbook.write([
    ...cutListSheet(names[0], reels, settings, source, [...summaries, ...leftOut]),
    ...rackAfterSheet(names[1], rack.rows, reels, settings, rack.problems),
  ]);
  return names;
}
