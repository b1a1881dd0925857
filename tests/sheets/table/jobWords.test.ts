import { roleOfHeading } from '../../../src/sheets/table/roles';
import { rackTable } from '../../../src/sheets/rack/rackTable';
import { jobTable } from '../../../src/sheets/jobs/jobTable';
import { findTables } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import { jobTable as quoteTable } from '../../../src/sheets/jobs/quoteLine';
import { JOB_WORDS } from '../../../src/sheets/table/jobWords';
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
  expect([hose, a, b, overall, quantity].map(heading => roleOfHeading(heading))).toEqual([
    'hose',
    'fittingA',
    'fittingB',
    'overall',
    'quantity',
  ]);
  const cells = new SheetCells(job);
  const found = jobTable(cells, findTables(cells)[0]!, NO_ANSWERS, {})!;
  expect(Object.keys(found.columns)).toEqual(
    expect.arrayContaining(['hose', 'fittingA', 'fittingB', 'overall', 'cutLength', 'quantity']),
  );
  expect(Object.keys(quoteTable(job)?.columns ?? {})).toEqual(
    expect.arrayContaining(['hose', 'fittingA', 'fittingB', 'overall', 'quantity']),
  );
  const stock = new SheetCells(
    sheetContent([
      [hose, 'Length (mm)'],
      ['Alder DN 12', 40_000],
    ]),
  );
  expect(rackTable(stock, findTables(stock)[0]!, { answers: NO_ANSWERS })?.columns).toEqual({ hose: 0, length: 1 });
});

test('a column named only "Fitting" is end A where there is no other, and no end of a bench card', () => {
  expect(JOB_WORDS.fittingA.test('fitting')).toBe(false);
  expect(roleOfHeading('Fitting')).toBe('fittingA');
});
