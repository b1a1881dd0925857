import { emptyWorkbook } from '../../../src/preview/page/emptyWorkbook';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { addressOf } from '../../../src/workbook/a1';
import { builtFunctions } from '../../preview/builtFunctions';

const functions = builtFunctions();
const associated = loadScript(functions.script, functions.sibling);

export type Rows = readonly (readonly (string | number)[])[];

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

/** A workbook that calculates, with a catalogue or without. */
export async function openBook(hasCatalogue: boolean) {
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
  return { port, put, calculate: () => open.calculate(), dispose: () => open.dispose() };
}
