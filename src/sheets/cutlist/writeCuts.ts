import type { Workbook } from '../../workbook/workbook';
import { cutListSheet } from './cutListSheet';
import { freeSheetName } from '../print/freeSheetName';
import type { Gathered } from './gatherCuts';
import type { HosePlan } from './planHose';
import { summarySentence } from './planText';
import { leftOutSentences } from './leftOutSentences';
import { rackIn } from '../rack/rackRow';
import { rackAfterSheet } from './rackAfterSheet';

/** Writes the cut list and the rack afterwards as new sheets, in one batch; gives their names. */
export async function writeCuts(
  workbook: Workbook,
  gathered: Gathered,
  plans: readonly HosePlan[],
  today: string,
): Promise<readonly [cutList: string, rackAfter: string]> {
  const { settings, rack, report, rackSheet, lineCount } = gathered;
  const taken = await workbook.sheets();
  const names = [freeSheetName('Cut list', taken, today), freeSheetName('Rack after', taken, today)] as const;
  const reels = plans.flatMap(plan => plan.reels);
  const source = `From sheet ${report.sheet} (${lineCount} lines) and rack ${rackSheet}, ${today}`;
  const summaries = plans.flatMap(plan => [summarySentence(plan, settings.unit), ...plan.job.warnings]);
  await workbook.write([
    ...cutListSheet(names[0], reels, settings, source, [...leftOutSentences(report), ...summaries]),
    ...rackAfterSheet(names[1], rackIn(rack.rows, settings.unit), reels, settings, rack.report.leftOut),
  ]);
  return names;
}
