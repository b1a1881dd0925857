import { cardTable } from '../../../src/sheets/jobs/cardHeadings';
import { roleOfHeading } from '../../../src/sheets/table/roles';
import { rackTable } from '../../../src/sheets/rack/rack';
import { jobTable } from '../../../src/sheets/jobs/readCutLines';
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
  expect(Object.keys(jobTable(job)?.columns ?? {})).toEqual(expect.arrayContaining(['hose', 'overall', 'cutLength', 'quantity']));
  for (const table of [cardTable(job)]) {
    expect(Object.keys(table?.columns ?? {})).toEqual(
      expect.arrayContaining(['hose', 'fittingA', 'fittingB', 'overall', 'quantity']),
    );
  }
  expect(
    rackTable(
      sheetContent([
        [hose, 'Length (mm)'],
        ['Alder DN 12', 40_000],
      ]),
    )?.columns.hose?.index,
  ).toBe(0);
});

test('a column named only "Fitting" is end A where there is no other, and no end of a bench card', () => {
  expect(JOB_WORDS.fittingA.test('fitting')).toBe(false);
  expect(roleOfHeading('Fitting')).toBe('fittingA');
});
