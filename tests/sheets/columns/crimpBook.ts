import { bundlesOf, type BundleId } from '../../../src/sheets/columns/bundles';
import { columnsView } from '../../../src/sheets/columns/columnsView';
import type { FormulaForm } from '../../../src/sheets/columns/formulaForm';
import { missingFormulas } from '../../../src/sheets/columns/missingFormulas';
import { offersFor } from '../../../src/sheets/columns/offers';
import { planColumns } from '../../../src/sheets/columns/planColumns';
import { judgeCrimpRow } from '../../../src/sheets/crimps/judgeCrimpRow';
import { readCrimpRows } from '../../../src/sheets/crimps/readCrimpRows';
import { addressOf, blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { openBook, type Rows } from './catalogueBook';

const SHEET = 'Readings';

/** A sheet of readings in a workbook that calculates, to which columns are added as the pane does. */
export async function openReadings(rows: Rows, { hasCatalogue = false, selected = 'A2' } = {}) {
  const { port, put, calculate, dispose } = await openBook(hasCatalogue);
  await put(SHEET, rows);
  await calculate();
  const choice = { sheet: SHEET, block: blockOf(selected)! };

  async function view() {
    const found = await columnsView(port, choice);
    if (found.status !== 'ready') throw new Error(found.status);
    return found;
  }
  return {
    dispose,
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
      await calculate();
      const [content] = await port.read([{ sheet: SHEET, address: addressOf(plan.at) }]);
      const [headings = [], ...body] = content!.values;
      return Object.fromEntries(headings.map((heading, i) => [String(heading), body.map(row => row[i]!)]));
    },
    /** Types rows below the table. */
    async append(more: Rows) {
      const row = (await port.used(SHEET))!.values.length;
      const address = addressOf({ row, column: 0, rows: more.length, columns: more[0]!.length });
      await port.write([{ kind: 'values', at: { sheet: SHEET, address }, values: more.map(each => [...each]) }]);
      await calculate();
    },
    /** Fills what rows lack; gives what then stands under each heading. */
    async fill(): Promise<Record<string, CellValue[]>> {
      await port.write(missingFormulas(await view()).changes);
      await calculate();
      const [headings = [], ...body] = (await port.used(SHEET))!.values;
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
