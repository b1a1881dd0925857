import { jobChoice } from '../../../src/sheets/jobs/jobChoice';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const JOBS = [
  ['Line', 'Hose', 'Note'],
  [1, 'Larch DN 12', ''],
  [2, 'Larch DN 8', ''],
];

test.each([
  ['one cell', 'B2', false],
  ['a cell and a blank beside it', 'B2:C2', false],
  ['blank cells', 'C2:D2', false],
  ['several filled cells of one row', 'A2:B2', true],
  ['cells of two rows', 'A2:A3', true],
  ['blank cells of two rows', 'C2:C3', true],
])('%s selected: rows are chosen only by several rows, or several filled cells of one', async (_, address, isChoice) => {
  const { workbook } = fakeWorkbook({ Jobs: JOBS }, { sheet: 'Jobs', address });
  expect(await jobChoice(workbook)).toMatchObject({ sheet: 'Jobs', isChoice });
});
