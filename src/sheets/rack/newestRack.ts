import type { Workbook } from '../../workbook/workbook';

const KEY = 'rack.newest';

/** The rack that was written with the newest cut list; undefined where there is none, or its sheet has gone. */
export async function newestRack(workbook: Workbook): Promise<string | undefined> {
  const [sheet, sheets] = await Promise.all([workbook.recall(KEY), workbook.sheets()]);
  return sheet !== undefined && sheets.includes(sheet) ? sheet : undefined;
}

/** Remembers with the workbook which rack goes on from here. */
export const rememberRack = (workbook: Workbook, sheet: string): Promise<void> => workbook.remember(KEY, sheet);
