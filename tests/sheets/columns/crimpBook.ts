import { emptyWorkbook } from '../../../src/preview/page/emptyWorkbook';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { bundlesOf, type BundleId } from '../../../src/sheets/columns/bundles';
import { columnsView } from '../../../src/sheets/columns/columnsView';
import type { FormulaForm } from '../../../src/sheets/columns/formulaForm';
import { offersFor } from '../../../src/sheets/columns/offers';
import { planColumns } from '../../../src/sheets/columns/planColumns';
import { judgeCrimpRow } from '../../../src/sheets/crimps/judgeCrimpRow';
import { readCrimpRows } from '../../../src/sheets/crimps/readCrimpRows';
import { addressOf, blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { builtFunctions } from '../../preview/builtFunctions';

const functions = builtFunctions();
const associated = loadScript(functions.script, functions.sibling);

type Rows = readonly (readonly (string | number)[])[];

/** A catalogue of an invented workshop: never crimp from it. */
export const CATALOGUE: Readonly<Record<string, Rows>> = {
  Hoses: [
    ['Hose', 'Family', 'Bore (mm)', 'Working pressure (bar)'],
    ['Hazel', 'Hazel', 12.7, 275],
  ],
  Fittings: [
    ['Fitting', 'Family', 'End form', 'Bore (mm)', 'Cut-off (mm)'],
    ['Straight', 'Hazel', '24° cone', 12.7, 30],
    ['Elbow', 'Hazel', '24° cone', 12.7, 41],
  ],
  Crimps: [
    ['Hose', 'Fitting', 'Die', 'Dial', 'Crimp diameter (mm)', 'Tolerance (mm)', 'Largest spread (mm)'],
    ['Hazel', 'Straight', 'D26', 288, 24.9, 0.12, 0.25],
    ['Hazel', 'Elbow', 'D26', 290, 25.4, 0.12, 0.4],
  ],
};
const CATALOGUE_CALL = '=HOSE.CATALOGUE(Hoses!A1:D2,Fittings!A1:E3,Crimps!A1:G3)';
const SHEET = 'Readings';

/** A sheet of readings in a workbook that calculates, to which columns are added as the pane does. */
export async function openReadings(rows: Rows, { hasCatalogue = false, selected = 'A2' } = {}) {
  const open = headlessWorkbook(emptyWorkbook().data, hostFunctions(functions.metadata, associated));
  const port = new UniverWorkbook(open.univer, open.api);
  async function put(sheet: string, cells: Rows) {
    const columns = Math.max(...cells.map(row => row.length));
    const values = cells.map(row => Array.from({ length: columns }, (_, i) => row[i] ?? ''));
    const address = addressOf({ row: 0, column: 0, rows: values.length, columns });
    await port.write([
      { kind: 'addSheet', sheet },
      { kind: 'values', at: { sheet, address }, values },
    ]);
  }
  if (hasCatalogue) {
    for (const [sheet, cells] of Object.entries(CATALOGUE)) await put(sheet, cells);
    await port.write([
      { kind: 'addSheet', sheet: 'Parts' },
      { kind: 'formulas', at: { sheet: 'Parts', address: 'A1' }, formulas: [[CATALOGUE_CALL]] },
    ]);
  }
  await put(SHEET, rows);
  await open.calculate();
  const choice = { sheet: SHEET, block: blockOf(selected)! };

  async function view() {
    const found = await columnsView(port, choice);
    if (found.status !== 'ready') throw new Error(found.status);
    return found;
  }
  return {
    dispose: () => open.dispose(),
    view,
    /** What a bundle cannot add, and why. */
    async lacking(id: BundleId = 'qa', form: FormulaForm = 'cell') {
      const bundle = bundlesOf(offersFor(await view(), { spill: form === 'column' })).find(each => each.id === id)!;
      return Object.fromEntries(bundle.lacking.flatMap(({ reason, headings }) => headings.map(each => [each, reason])));
    },
    /** Adds a bundle; gives what then stands under each new heading. */
    async add(id: BundleId = 'qa', form: FormulaForm = 'cell'): Promise<Record<string, CellValue[]>> {
      const before = await view();
      const bundle = bundlesOf(offersFor(before, { spill: form === 'column' })).find(each => each.id === id)!;
      const plan = planColumns(before, bundle.offers, { form });
      await port.write(plan.changes);
      await open.calculate();
      const [content] = await port.read([{ sheet: SHEET, address: addressOf(plan.at) }]);
      const [headings = [], ...body] = content!.values;
      return Object.fromEntries(headings.map((heading, i) => [String(heading), body.map(row => row[i]!)]));
    },
    /** Verdicts of Analysis, Entry and Records: `1 A LOOSE`. */
    async analysis(): Promise<string[]> {
      const { rows: crimps } = (await readCrimpRows(port, undefined, choice))!;
      return crimps.map(row => {
        if (row.problem) return row.problem.sentence;
        const { verdict } = judgeCrimpRow(
          row,
          row.readings.map(reading => reading!),
        );
        return [row.row, row.end, verdict].filter(Boolean).join(' ');
      });
    },
  };
}
