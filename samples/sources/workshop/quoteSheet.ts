import type { CellFormulaValue, Worksheet } from 'exceljs';
import { at, call, named } from '../book/call';
import { dressRows, putHeadings, putSetting, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { HANDLE } from '../catalogue/lookedUpJobs';
import { weekJobs } from './weekJobs';

export const QUOTE = 'Quote';
/** Costs and settings stand on a sheet of their own, which stays in the house. */
export const QUOTE_COSTS = 'Quote costs';
const HEADING_ROW = 6;
const COSTS_HEADING_ROW = 9;

const money = (heading: string): SheetColumn => ({ heading, width: 14, format: '0.00', align: 'right', kind: 'computed' });

const columns: readonly SheetColumn[] = [
  { heading: 'Item', width: 6, align: 'center' },
  { heading: 'Description', width: 31 },
  { heading: 'Hose', width: 21 },
  { heading: 'Coupling A', width: 33 },
  { heading: 'Coupling B', width: 33 },
  { heading: 'Overall length (mm)', width: 12, format: '0', align: 'right' },
  { heading: 'Quantity', width: 10, format: '0', align: 'right' },
  money('Price, each'),
  money('Amount'),
];

const costColumns: readonly SheetColumn[] = [
  { heading: 'Item', width: 6, align: 'center' },
  { heading: 'Description', width: 31 },
  ...['Hose, each', 'Couplings, each', 'Labour, each', 'Cost, each', 'Margin earned'].map(money),
];

/** Jobs that the neighbour asked for: the first ones of the week that can be made with two couplings. */
const quoted = weekJobs.filter(job => !job.status && !job.note && job.couplingA).slice(0, 4);

/** Fills a quote for a neighbour, and the sheet of its costs: prices follow this workbook's catalogue, rates, margin and rounding. */
export async function fillQuote(sheet: Worksheet, costs: Worksheet): Promise<void> {
  setWidths(sheet, columns);
  setWidths(costs, costColumns);
  putTitle(
    sheet,
    'Quote 26/118 for the neighbouring contractor',
    `Prices follow the sheet ${QUOTE_COSTS}; the pane writes such a quote for any job list, and a copy of values for the customer.`,
    `${INVENTED}. Prices are invented. Rating at room temperature; the fluid was not checked.`,
  );
  putTitle(
    costs,
    'Costs of quote 26/118: these stay in the house',
    'Costs follow the catalogue and the rates of this workbook.',
    `${INVENTED}. Prices and costs are invented.`,
  );
  putSetting(costs, 'B5', 'Margin', 0.4, '0%');
  putSetting(costs, 'B6', 'Round prices up to', 0.5, '0.00');
  putHeadings(sheet, HEADING_ROW, columns);
  putHeadings(costs, COSTS_HEADING_ROW, costColumns);
  const [first, last] = [HEADING_ROW + 1, HEADING_ROW + quoted.length];
  dressRows(sheet, first, last + 1, columns);
  dressRows(costs, COSTS_HEADING_ROW + 1, COSTS_HEADING_ROW + quoted.length, costColumns);
  let sum = 0;
  for (const [index, job] of quoted.entries()) {
    const [row, costRow] = [first + index, COSTS_HEADING_ROW + 1 + index];
    [index + 1, job.wantedFor, job.hose, job.couplingA, job.couplingB, job.overall, job.quantity].forEach((value, column) => {
      if (value !== undefined) sheet.getCell(row, column + 1).value = value;
    });
    costs.getCell(`A${costRow}`).value = index + 1;
    costs.getCell(`B${costRow}`).value = job.wantedFor;
    const parts = ['C', 'D', 'E', 'F', 'G'].map(column => at(`${column}${row}`, QUOTE));
    await putFormula(costs, `C${costRow}`, call('UNITCOST', named('Catalogue', 'Catalogue', HANDLE), ...parts));
    const cost = at(`F${costRow}`, QUOTE_COSTS);
    const [[price]] = (await putFormula(
      sheet,
      `H${row}`,
      call('SELLPRICE', cost, at('$C$5', QUOTE_COSTS), at('$C$6', QUOTE_COSTS)),
    )) as [[number]];
    const earned = Number((1 - (costs.getCell(`F${costRow}`).value as number) / price).toFixed(6));
    costs.getCell(`G${costRow}`).value = {
      formula: `ROUND(1-F${costRow}/${QUOTE}!H${row},6)`,
      result: earned,
    } as CellFormulaValue;
    costs.getCell(`G${costRow}`).numFmt = '0.0%';
    const amount = Math.round(price * job.quantity * 100) / 100;
    sum += amount;
    sheet.getCell(`I${row}`).value = { formula: `H${row}*G${row}`, result: amount } as CellFormulaValue;
  }
  sheet.getCell(`B${last + 1}`).value = 'Total';
  sheet.getCell(`I${last + 1}`).value = { formula: `SUM(I${first}:I${last})`, result: sum } as CellFormulaValue;
  setUpSheet(sheet, HEADING_ROW, 2);
  setUpSheet(costs, COSTS_HEADING_ROW, 2);
}
