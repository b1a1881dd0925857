import type { CellFormulaValue, Worksheet } from 'exceljs';
import { at, call, named } from '../book/call';
import { dressRows, putHeadings, putSetting, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { HANDLE } from '../catalogue/lookedUpJobs';
import { weekJobs } from './weekJobs';

export const QUOTE = 'Quote';
const HEADING_ROW = 9;

const money = (heading: string): SheetColumn => ({ heading, width: 12, format: '0.00', align: 'right', kind: 'computed' });

const columns: readonly SheetColumn[] = [
  { heading: 'Item', width: 6, align: 'center' },
  { heading: 'Description', width: 31 },
  { heading: 'Hose', width: 21 },
  { heading: 'Coupling A', width: 33 },
  { heading: 'Coupling B', width: 33 },
  { heading: 'Overall length (mm)', width: 12, format: '0', align: 'right' },
  { heading: 'Quantity', width: 10, format: '0', align: 'right' },
  money('Cost, each'),
  money('Price, each'),
  money('Amount'),
];

/** Jobs that the neighbour asked for: the first ones of the week that can be made with two couplings. */
const quoted = weekJobs.filter(job => !job.status && !job.note && job.couplingA).slice(0, 4);

/** Fills a quote for a neighbour: cost and price of each assembly by this workbook's catalogue and rates. */
export async function fillQuote(sheet: Worksheet): Promise<void> {
  setWidths(sheet, columns);
  putTitle(
    sheet,
    'Quote 26/118 for the neighbouring contractor',
    'Costs follow the catalogue and the rates of this workbook; the pane writes such a quote for any job list.',
    `${INVENTED}. Prices are invented. Rating at room temperature; the fluid was not checked.`,
  );
  putSetting(sheet, 'B5', 'Margin', 0.4, '0%');
  putSetting(sheet, 'B6', 'Round prices up to', 0.5, '0.00');
  putHeadings(sheet, HEADING_ROW, columns);
  const [first, last] = [HEADING_ROW + 1, HEADING_ROW + quoted.length];
  dressRows(sheet, first, last + 1, columns);
  const catalogue = named('Catalogue', 'Catalogue', HANDLE);
  let sum = 0;
  for (const [index, job] of quoted.entries()) {
    const row = first + index;
    [index + 1, job.wantedFor, job.hose, job.couplingA, job.couplingB, job.overall, job.quantity].forEach((value, column) => {
      if (value !== undefined) sheet.getCell(row, column + 1).value = value;
    });
    const parts = ['C', 'D', 'E', 'F', 'G'].map(column => at(`${column}${row}`));
    const cost = call('UNITCOST', catalogue, ...parts);
    // The total of UNITCOST is its fourth value: one cell asks for it, so that what is beside it stays free.
    await putFormula(sheet, `L${row}`, cost);
    sheet.getCell(`H${row}`).value = { formula: `O${row}`, result: sheet.getCell(`O${row}`).value as number };
    const [[price]] = (await putFormula(sheet, `I${row}`, call('SELLPRICE', at(`H${row}`), at('$C$5'), at('$C$6')))) as [
      [number],
    ];
    const amount = Math.round(price * job.quantity * 100) / 100;
    sum += amount;
    sheet.getCell(`J${row}`).value = { formula: `I${row}*G${row}`, result: amount } as CellFormulaValue;
  }
  sheet.getCell(`B${last + 1}`).value = 'Total';
  sheet.getCell(`J${last + 1}`).value = { formula: `SUM(J${first}:J${last})`, result: sum } as CellFormulaValue;
  putHeadings(sheet, HEADING_ROW, ['Hose, each', 'Couplings, each', 'Labour, each', 'Total, each'].map(money), 12);
  dressRows(sheet, first, last, ['Hose, each', 'Couplings, each', 'Labour, each', 'Total, each'].map(money), 12);
  [12, 13, 14, 15].forEach(column => (sheet.getColumn(column).width = 12));
  setUpSheet(sheet, HEADING_ROW, 2);
}
