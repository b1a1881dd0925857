import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import '@univerjs/sheets-filter/facade';
import '@univerjs/sheets-sort/facade';
import { IUniverInstanceService } from '@univerjs/core';
import { UniverSheetsFilterPlugin } from '@univerjs/sheets-filter';
import { UniverSheetsSortPlugin } from '@univerjs/sheets-sort';
import { addressOf, blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { bundlesOf, type BundleId } from '../../../src/sheets/columns/bundles';
import { columnsView } from '../../../src/sheets/columns/columnsView';
import type { FormulaForm } from '../../../src/sheets/columns/formulaForm';
import { offersFor } from '../../../src/sheets/columns/offers';
import { planColumns } from '../../../src/sheets/columns/planColumns';
import { builtFunctions } from '../builtFunctions';
import { openedFile } from '../openedFile';

export const SHEET = 'Our lines';
export const MACHINE = 'Machine at the gate';
export const FORMS: readonly FormulaForm[] = ['cell', 'row', 'column'];

export const HEADINGS = [
  ...['Order', 'Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Qty', 'Temperature (°C)', 'Dial set'],
  ...['R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
];
const CONE = 'Larch 24° cone S straight DN 12';
const READINGS = [27.35, 27.36, 27.34, 27.35];

export type Row = readonly (string | number)[];

export const line = (order: number, overall: number | string, ...rest: Row): Row => [
  ...[order, 'Larch DN 12', CONE, CONE, overall, 2],
  ...(rest.length > 0 ? rest : ['', 403, ...READINGS]),
];

/** A length in words, a blank row, a coupling that nobody knows, one out of spec, one too short on which nothing is measured. */
export const ROWS: readonly Row[] = [
  line(1, 1200),
  line(2, 'long'),
  [],
  [4, 'Larch DN 12', 'Elm', CONE, 900, 1, '', 403, ...READINGS],
  line(5, 905.5, 60, 403, 27.5, 27.51, 27.5, 27.49),
  line(6, 200, '', 403, '', '', '', ''),
];

const functions = builtFunctions();
const associated = loadScript(functions.script);

/** The sample catalogue, open without a page, with a sheet of lines to which columns are added as the pane does. */
export async function openLines() {
  const file = readFileSync(join(process.cwd(), 'samples/catalogue.xlsx'));
  const data = await openedFile(new Uint8Array(file), 'catalogue.xlsx');
  let calls = 0;
  const counted = [...associated].map(([id, run]) => {
    const counting = (...args: Parameters<typeof run>) => {
      calls += 1;
      return run(...args);
    };
    return [id, counting] as const;
  });
  const open = headlessWorkbook(data, hostFunctions(functions.metadata, new Map(counted)));
  open.univer.registerPlugin(UniverSheetsSortPlugin);
  open.univer.registerPlugin(UniverSheetsFilterPlugin);
  // Undo works on the workbook that has the focus; on the page a click gives it.
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  const port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();

  async function put(rows: readonly Row[], from = 1): Promise<void> {
    const values = [...(from === 1 ? [HEADINGS] : []), ...rows].map(row => HEADINGS.map((_, i) => row[i] ?? ''));
    const address = addressOf({ row: from - 1, column: 0, rows: values.length, columns: HEADINGS.length });
    const sheets = await port.sheets();
    await port.write([
      ...(sheets.includes(SHEET) ? [] : [{ kind: 'addSheet', sheet: SHEET } as const]),
      { kind: 'values', at: { sheet: SHEET, address }, values },
    ]);
  }

  async function view() {
    const found = await columnsView(port, { sheet: SHEET, block: blockOf('B2')! });
    if (found.status !== 'ready') throw new Error(found.status);
    return found;
  }

  /** What stands under each heading. */
  async function standing(): Promise<Record<string, CellValue[]>> {
    const { values } = (await port.used(SHEET))!;
    return Object.fromEntries(values[0]!.map((heading, at) => [String(heading), values.slice(1).map(row => row[at]!)]));
  }

  /** Plans a bundle as the pane does, or every column that is offered. */
  async function planned(id: BundleId | 'all', form: FormulaForm, machine = MACHINE) {
    const before = await view();
    const offers = offersFor(before, { margin: '0.4', machine, spill: form === 'column' });
    const wanted = id === 'all' ? offers : bundlesOf(offers).find(bundle => bundle.id === id)!.offers;
    return planColumns(before, wanted, { form });
  }

  /** Adds a bundle, or all; gives the plan and what then stands under each heading. */
  async function add(id: BundleId | 'all', form: FormulaForm, machine?: string) {
    const plan = await planned(id, form, machine);
    await port.write(plan.changes);
    await open.calculate();
    return { plan, columns: await standing() };
  }

  /** Calls of our functions while the whole workbook is calculated once. */
  async function callsOfAll(): Promise<number> {
    calls = 0;
    await open.calculate();
    return calls;
  }

  return { open, port, put, view, standing, planned, add, callsOfAll };
}

export const withoutSentences = (columns: Record<string, CellValue[]>) =>
  Object.fromEntries(
    Object.entries(columns).map(([name, cells]) => [name, cells.map(cell => (typeof cell === 'object' ? cell.error : cell))]),
  );
