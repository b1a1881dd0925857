import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { isReady } from '../../../src/sheets/jobs/jobLine';
import { excelApi, excelLayouts, excelTables, strictExcel } from '../../host/excel/strictExcel';
import { expectLeftOut, STEP_OF_1_MM, toldLine } from './sheetCase';

beforeEach(() => (excelApi.supported = ['1.13']));
afterEach(() => {
  excelApi.supported = [];
  delete excelLayouts.Jobs;
  delete excelTables.Jobs;
});

const at = { sheet: 'Jobs', row: 1, column: 0, rows: 1, columns: 1 };

async function expectExcel(taken: readonly string[], leftOut: readonly string[]) {
  const { lines, report } = await readJobs(excelWorkbook(), STEP_OF_1_MM);
  expect(lines.filter(isReady).map(toldLine)).toEqual(taken);
  expectLeftOut(report.leftOut, leftOut);
}

test('in Excel: merged names, a merged quantity, a filtered row, an error of a formula', async () => {
  strictExcel(
    {
      Jobs: [
        ['Hose', 'Cut length (mm)', 'Qty'],
        ['Alder DN 12', 640, 2],
        ['', 650, 1],
        ['Larch DN 16', 660, 3],
        ['', 670, ''],
        ['Larch DN 16', ['=1/0', '#DIV/0!'], 1],
        ['Larch DN 16', 680, 1],
      ],
    },
    at,
  );
  excelLayouts.Jobs = {
    hiddenRows: [6],
    merges: [
      { row: 1, column: 0, rows: 2, columns: 1 },
      { row: 3, column: 0, rows: 2, columns: 1 },
      { row: 3, column: 2, rows: 2, columns: 1 },
    ],
  };
  await expectExcel(
    ['2: Alder DN 12, cut 640 mm, × 2', '3: Alder DN 12, cut 650 mm, × 1'],
    ['4 stop: merged over rows 4 to 5', '5 stop: merged over rows 4 to 5', '6 stop: #DIV/0!', '7 hidden'],
  );
});

test('in Excel: a table with its row of totals, a line typed below it', async () => {
  strictExcel(
    {
      Jobs: [
        ['Hose', 'Cut length (mm)', 'Qty'],
        ['Alder DN 12', 640, 2],
        ['Larch DN 16', 650, 1],
        ['Total', ['=SUBTOTAL(109,B2:B3)', 1290], 3],
        ['Larch DN 16', 700, 1],
      ],
    },
    at,
  );
  excelTables.Jobs = [{ row: 0, column: 0, rows: 4, columns: 3, name: 'Lines', showHeaders: true, showTotals: true }];
  await expectExcel(['2: Alder DN 12, cut 640 mm, × 2', '3: Larch DN 16, cut 650 mm, × 1'], ['5 below']);
});
