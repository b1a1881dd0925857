import * as v from 'valibot';
import type { Workbook } from '../../workbook/workbook';
import { recalled } from '../table/recalled';
import { answersGoOn } from '../table/tableAnswers';

const KEY = 'rack.newest';
const BEFORE = 'rack.before';

/** The rack that a cut list was planned on, and the numbers of the pieces that it put on its reels. */
export interface RackBefore {
  readonly sheet: string;
  readonly pieces: readonly string[];
}

const Stored = v.nullable(v.object({ sheet: v.string(), pieces: v.array(v.string()) }));

/** The rack that was written with the newest cut list; undefined where there is none, or its sheet has gone. */
export async function newestRack(workbook: Workbook): Promise<string | undefined> {
  const [sheet, sheets] = await Promise.all([workbook.recall(KEY), workbook.sheets()]);
  return sheet !== undefined && sheets.includes(sheet) ? sheet : undefined;
}

/** The rack that the newest cut list was planned on; undefined where nobody knows, or its sheet has gone. */
export async function rackBefore(workbook: Workbook): Promise<RackBefore | undefined> {
  const [before, sheets] = await Promise.all([recalled(workbook, BEFORE, Stored, null), workbook.sheets()]);
  return before && sheets.includes(before.sheet) ? before : undefined;
}

/** Remembers with the workbook which rack goes on from here, which it was made from, and what was said about that one. */
export async function rememberRack(workbook: Workbook, sheet: string, before?: RackBefore): Promise<void> {
  await Promise.all([
    workbook.remember(KEY, sheet),
    workbook.remember(BEFORE, JSON.stringify(before ?? null)),
    ...(before ? [answersGoOn(workbook, 'rack', before.sheet, sheet)] : []),
  ]);
}
