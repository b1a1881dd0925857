import type { Decimal } from '../../core/units/decimal';
import type { Workbook } from '../../workbook/workbook';
import type { RowProblem } from '../table/rowProblem';
import type { CutSettings } from './cutSettings';
import { hoseJobs, type HoseJob } from './hoseJob';
import { pickedRows, type PickedRows } from '../table/pickedRows';
import { rackLikeness, rackTable, readRack, type Rack } from '../rack/rack';
import { jobTable, jobUnit, readCutLines } from '../jobs/readCutLines';
import { reelLengths } from '../rack/reelLengths';

/** Everything the plans are made from, as it was read. */
export interface Gathered {
  /** The lines that were chosen. */
  readonly picked: Omit<PickedRows, 'content'>;
  readonly rackSheet: string;
  readonly jobs: readonly HoseJob[];
  readonly lineCount: number;
  readonly lineProblems: readonly RowProblem[];
  readonly rack: Rack;
  readonly reelLengths: ReadonlyMap<string, Decimal>;
  readonly settings: CutSettings;
}

/** A reason that nothing can be planned, ready to be shown. */
export class NothingToPlan extends Error {}

/** Sheets that hold a rack: a table with hose and length, but neither a job table nor the catalogue's hoses; the likeliest first. */
export async function rackSheets(workbook: Workbook): Promise<readonly string[]> {
  const names = await workbook.sheets();
  const contents = await Promise.all(names.map(name => workbook.used(name)));
  const found = names.map((name, index) => ({ name, likeness: jobTable(contents[index]) ? 0 : rackLikeness(contents[index]) }));
  return found
    .filter(({ likeness }) => likeness > 0)
    .sort((a, b) => b.likeness - a.likeness)
    .map(({ name }) => name);
}

/**
 * Reads the selected job sheet, the rack and the reel lengths of the catalogue's sheet Hoses.
 * @throws NothingToPlan where a table is missing or its unit is not that of the settings
 */
export async function gatherCuts(workbook: Workbook, rackSheet: string, settings: CutSettings, today: string): Promise<Gathered> {
  return gathered(workbook, await pickedRows(workbook), rackSheet, settings, today);
}

/** Reads the same lines and the same rack again, wherever the selection is now. */
export async function gatherAgain(
  workbook: Workbook,
  { picked, rackSheet, settings }: Gathered,
  today: string,
): Promise<Gathered> {
  return gathered(workbook, { ...picked, content: await workbook.used(picked.sheet) }, rackSheet, settings, today);
}

/** True where lines and rack still say what a plan was made from. */
export function isSameWork(one: Gathered, other: Gathered): boolean {
  const workOf = ({ jobs, rack }: Gathered) => JSON.stringify([jobs.map(({ lines }) => lines), rack.rows]);
  return workOf(one) === workOf(other);
}

async function gathered(
  workbook: Workbook,
  picked: PickedRows,
  rackSheet: string,
  settings: CutSettings,
  today: string,
): Promise<Gathered> {
  const table = jobTable(picked.content, picked.near) ?? jobTable(picked.content);
  if (!table) {
    throw new NothingToPlan(
      `Sheet ${picked.sheet} has no table with the columns Hose, Cut length and Quantity above the selected cell. Select your job lines, or one cell of the job table.`,
    );
  }
  const unit = jobUnit(table);
  if (unit && unit !== settings.unit) {
    throw new NothingToPlan(
      `The cut lengths of sheet ${picked.sheet} are in ${unit}: set the unit to ${unit}, and look at kerf, squaring and keep again.`,
    );
  }
  const stock = rackTable(await workbook.used(rackSheet));
  if (!stock) throw new NothingToPlan(`Sheet ${rackSheet} has no table with the columns Hose and Length.`);
  const { lines, problems } = readCutLines(table, settings.unit, settings.step, picked.rows);
  const rack = readRack(stock, settings.unit);
  const names = await workbook.sheets();
  const hoses = names.includes('Hoses') ? await workbook.used('Hoses') : undefined;
  return {
    picked: { sheet: picked.sheet, near: picked.near, rows: picked.rows },
    rackSheet,
    jobs: hoseJobs(lines, rack.rows, settings, today),
    lineCount: lines.length,
    lineProblems: problems,
    rack,
    reelLengths: reelLengths(hoses, settings.unit),
    settings,
  };
}
