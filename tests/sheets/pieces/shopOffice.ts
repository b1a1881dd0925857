import { Decimal } from '../../../src/core/units/decimal';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import { cutsWriting } from '../../../src/sheets/cutlist/cutsWriting';
import { gatherCuts, type CutWishes } from '../../../src/sheets/cutlist/gatherCuts';
import { planHoses } from '../../../src/sheets/cutlist/planHoses';
import { rememberJobSheet } from '../../../src/sheets/pieces/jobsOfPieces';
import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { rackSheets } from '../../../src/sheets/rack/rack';
import { rememberRack } from '../../../src/sheets/rack/newestRack';
import type { Workbook } from '../../../src/workbook/workbook';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { cutsOptions } from '../cutlist/demoWorkbook';
import { USUAL_SETTINGS } from '../cutlist/usualSettings';

/** Cards of lines that are planned, too, for no machine that is named. */
export const CARDS = {
  unit: 'mm',
  step: new Decimal(1),
  pressureUnit: 'bar',
  machine: '',
  take: new Set(['planned'] as const),
} as const;

/** A job sheet as many offices keep it: neither orders nor assembly numbers. */
export const week = (...lines: readonly (readonly FakeCell[])[]): readonly (readonly FakeCell[])[] => [
  ['Line', 'Hose', 'Cut length (mm)', 'Qty', 'Status'],
  ...lines.map(line => [...line, ...Array<FakeCell>(5 - line.length).fill('')]),
];

export const RACK: readonly (readonly FakeCell[])[] = [
  ['Hose', 'Length (mm)', 'Place', 'Lot'],
  ['Hazel DN 12', 20000, 'A1', 'L1'],
];

export const office = (sheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>>) =>
  fakeWorkbook({ Rack: RACK, ...sheets }, { sheet: Object.keys(sheets)[0]!, address: 'A2' }).workbook;

/** Plans the lines of a sheet on the rack that is offered first. */
export async function planned(workbook: Workbook, sheet: string, wishes: CutWishes = {}, rack?: string) {
  await workbook.select({ sheet, address: 'A2' });
  const [first] = await rackSheets(workbook);
  const gathered = await gatherCuts(workbook, rack ?? first!, USUAL_SETTINGS, '2026-11-30', wishes);
  const plans = await planHoses(gathered, solveCutPlan, () => {}, { aborted: false });
  const cuts = gathered.jobs.flatMap(({ lines }) =>
    lines.map(({ row, quantity, cutLength }) => `${row}: ${quantity} × ${cutLength}`),
  );
  return { gathered, plans, cuts };
}

/** Plans and writes, as the pane does. */
export async function written(workbook: Workbook, sheet: string, wishes: CutWishes = {}, rack?: string) {
  const made = await planned(workbook, sheet, wishes, rack);
  const writing = await cutsWriting(workbook, made.gathered, made.plans, { ...cutsOptions, prefix: '' });
  await rememberJobSheet(workbook, sheet);
  await rememberRack(workbook, writing.rackAfter, writing.before);
  await workbook.write(writing.changes);
  return { ...made, writing };
}

/** The pieces as `3-1: 700 planned`. */
export async function piecesText(workbook: Workbook): Promise<readonly string[]> {
  const { pieces } = (await readPieces(workbook))!;
  return pieces.map(({ piece, cutLength, status }) => `${piece}: ${cutLength!.value} ${status}`);
}

/** Writes into cells. */
export const type = (workbook: Workbook, sheet: string, address: string, value: string | number) =>
  workbook.write([{ kind: 'values', at: { sheet, address }, values: [[value]] }]);

/** What the bench says of a piece. */
export async function setStatus(workbook: Workbook, number: string, status: string): Promise<void> {
  const { pieces, table, sheet } = (await readPieces(workbook))!;
  const { row } = pieces.find(({ piece }) => piece === number)!;
  const column = table.columns.status!;
  const letters = `${column >= 26 ? String.fromCharCode(64 + Math.floor(column / 26)) : ''}${String.fromCharCode(65 + (column % 26))}`;
  await type(workbook, sheet, `${letters}${row}`, status);
}
