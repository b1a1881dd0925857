import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { excelApi, excelSpills, strictExcel } from './strictExcel';

const reenter = () => excelWorkbook().reenterUnknownNames();
/** One formula in A1 of a sheet, with what it is read as. */
const open = (formula: string, value: string | number, sheet = 'Jobs') =>
  strictExcel({ [sheet]: [[[formula, value]]] }, { sheet, row: 0, column: 0, rows: 1, columns: 1 });

// Forms that people report: OfficeDev/office-js issues 6611 (#NAME? stays), 3558 (_xldudf_), 4811 (a path before it), 2568 (a number before it).
test.each([
  ['=HOSE.CUTLENGTH(A2,1,2)', '#NAME?', '=HOSE.CUTLENGTH(A2,1,2)'],
  ['=_xldudf_HOSE_CUTLENGTH(A2,1,2)', '#NAME?', '=HOSE.CUTLENGTH(A2,1,2)'],
  ['=_xldudf_HOSE_CUTLENGTH(A2,1,2)', '#VALUE!', '=HOSE.CUTLENGTH(A2,1,2)'],
  ['=_xldudf_HOSE_CUTLENGTH(A2,1,2)', 1167.5, '=HOSE.CUTLENGTH(A2,1,2)'],
  [
    "=1+'C:\\Program Files\\Office16\\LIBRARY\\Analysis\\FUNCRES.XLAM'!_xldudf_HOSE_CUTLENGTH(A2,1,2)",
    '#NAME?',
    '=1+HOSE.CUTLENGTH(A2,1,2)',
  ],
  ['=[2]!_xldudf_HOSE_VELOCITY(60,20,"metric")', '#NAME?', '=HOSE.VELOCITY(60,20,"metric")'],
  ['=Old.xlsx!HOSE.VELOCITY(60,20)', '#REF!', '=HOSE.VELOCITY(60,20)'],
  [
    `=IF('O''Hara "old" (2)'!A1="_xldudf_HOSE_X(",_xldudf_HOSE_VELOCITY(60,20),"")`,
    '#NAME?',
    `=IF('O''Hara "old" (2)'!A1="_xldudf_HOSE_X(",HOSE.VELOCITY(60,20),"")`,
  ],
])('%s that is read as %s is entered again as %s', async (formula, value, entered) => {
  const excel = open(formula, value);
  expect(await reenter()).toBe(1);
  expect(excel.written).toEqual([`formulas of Jobs!A1 = [[${JSON.stringify(entered)}]]`]);
});

test.each([
  ['=SUM(A1)', '#NAME?'],
  ['=HOSE.CUTLENGTH(A2,1,2)', '#VALUE!'],
  ['=HOSE.CUTLENGTH(A2,1,2)', 1167.5],
  ['="HOSE.CUTLENGTH(A2)"&NONE()', '#NAME?'],
  ['=_xldudf_OTHER_CUTLENGTH(A2)', '#NAME?'],
])('%s that is read as %s stays as it is', async (formula, value) => {
  const excel = open(formula, value);
  expect(await reenter()).toBe(0);
  expect(excel.written).toEqual([]);
});

test('a cell that another formula fills is not entered: its formula is', async () => {
  const formula = '=_xldudf_HOSE_CRIMPDETAIL(B2:E2,F2,G2)';
  const excel = strictExcel(
    { Jobs: [[[formula, 27.5] as const, [formula, 0.1] as const]] },
    { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 },
  );
  excelApi.supported = ['1.12'];
  Object.assign(excelSpills, { 'Jobs!A1': 'A1', 'Jobs!B1': 'A1' });
  try {
    expect(await reenter()).toBe(1);
    expect(excel.written).toEqual(['formulas of Jobs!A1 = [["=HOSE.CRIMPDETAIL(B2:E2,F2,G2)"]]']);
  } finally {
    excelApi.supported = [];
    delete excelSpills['Jobs!A1'];
    delete excelSpills['Jobs!B1'];
  }
});

test('what Excel still does not know after that is not counted as put right, and what helps is said', async () => {
  const excel = open('=_xldudf_HOSE_CUTLENGTH(A2,1,2)', '#NAME?');
  excel.book.knowsOurs = false;
  await expect(reenter()).rejects.toThrow(
    'Entered 0 again. 1 cell is still unknown to Excel, the first is Jobs!A1: close the workbook, open a blank one,',
  );
});

test('formulas of ours on a protected sheet are said, after those of the others were entered', async () => {
  const unknown = [[['=HOSE.LENGTH(1)', '#NAME?']]] as const;
  const excel = strictExcel({ Locked: unknown, Jobs: unknown }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  await expect(reenter()).rejects.toThrow(/Entered 1 again.*"Locked"/);
  expect(excel.written).toEqual(['formulas of Jobs!A1 = [["=HOSE.LENGTH(1)"]]']);
});

test('ten thousand of them go in requests that Excel on the web takes', async () => {
  const cell = [['=_xldudf_HOSE_CUTLENGTH(A2,1,2)', '#NAME?']] as const;
  const excel = strictExcel({ Jobs: Array(10_000).fill(cell) }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  expect(await reenter()).toBe(10_000);
  expect(excel.heaviest).toBeLessThan(5_000_000);
});
