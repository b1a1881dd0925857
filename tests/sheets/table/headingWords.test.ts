import { rackTable } from '../../../src/sheets/rack/rackTable';
import { jobTable } from '../../../src/sheets/jobs/jobTable';
import { findTables } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import { columnsByRole } from '../../../src/sheets/table/tableColumns';
import { sheetContent } from './sheetContent';

// Words that job sheets use for the same things: common practice.
test.each([
  { hose: 'Hose', a: 'Fitting A', b: 'Fitting B', overall: 'Overall length (mm)', quantity: 'Quantity' },
  { hose: 'Tube', a: 'End 1', b: 'End 2', overall: 'OAL (mm)', quantity: 'No. off' },
  { hose: 'Hose type', a: 'Coupling left', b: 'Coupling right', overall: 'Assembly length (mm)', quantity: 'Pcs' },
  { hose: 'Hose no.', a: 'First end', b: 'Second end', overall: 'Made-up length (mm)', quantity: 'Off' },
])('every view finds the columns of a sheet headed $hose, $a, $b, $overall, $quantity', ({ hose, a, b, overall, quantity }) => {
  const job = sheetContent([
    [hose, a, b, overall, 'Cut length (mm)', quantity],
    ['Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 1200, 1124.5, 3],
  ]);
  const cells = new SheetCells(job);
  const found = jobTable(cells, findTables(cells)[0]!, NO_ANSWERS, {})!;
  expect(Object.keys(found.columns)).toEqual(
    expect.arrayContaining(['hose', 'fittingA', 'fittingB', 'overall', 'cutLength', 'quantity']),
  );
  const stock = new SheetCells(
    sheetContent([
      [hose, 'Length (mm)'],
      ['Alder DN 12', 40_000],
    ]),
  );
  expect(rackTable(stock, findTables(stock)[0]!, { answers: NO_ANSWERS })?.columns).toEqual({ hose: 0, length: 1 });
});

const ENDS = [
  ['fittingA', 'fittingA'],
  ['fittingB', 'fittingB'],
] as const;
const block = { row: 0, column: 0, rows: 2, columns: 2 };

test('a column named only "Fitting" is end A where there is no other', () => {
  expect(columnsByRole({ headings: ['Hose', 'Fitting'], block }, ENDS)).toEqual({ fittingA: 1 });
  expect(columnsByRole({ headings: ['Fitting', 'Fitting A'], block }, ENDS)).toEqual({ fittingA: 1 });
});
