import type { Catalogue } from '../../core/catalogue/catalogue';
import { nameText } from '../../core/catalogue/nameText';
import { Decimal } from '../../core/units/decimal';
import { cellAddress } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import { partsKnown } from '../catalogue/namesKnown';
import { jobTable } from '../jobs/jobTable';
import { selectedTable } from '../table/selectedTable';
import { tableAnswers } from '../table/tableAnswers';
import type { Choice } from './candidates';
import { UNITS_OF } from './dutyUnits';
import { planRow, type RowContent } from './planRow';
import type { Demand } from './readDuty';

/** A chosen assembly as the cells of a row take it. */
export function rowContent(catalogue: Catalogue, demand: Demand, { hose, ends, lengths }: Choice): RowContent {
  const cutOff = (index: 0 | 1) => ({ value: new Decimal(ends[index].fitting.cutOff), unit: catalogue.units.length });
  return {
    hose: nameText(hose.hose),
    fittingA: nameText(ends[0].fitting.fitting),
    fittingB: nameText(ends[1].fitting.fitting),
    quantity: demand.quantity.toNumber(),
    overall: lengths.overall && { value: lengths.overall, unit: UNITS_OF[demand.units].length },
    cutOffA: cutOff(0),
    cutOffB: cutOff(1),
    temperature: { value: demand.hottest, unit: UNITS_OF[demand.units].temperature },
    twist: demand.twist?.toNumber(),
    fluid: demand.fluid && nameText(demand.fluid),
  };
}

/**
 * Writes a chosen assembly as the next row of the table under the selection, and selects that row.
 * @param catalogue its names say what a column holds where the heading does not
 * @returns what was written, in words
 * @throws Error with a sentence where nothing was written
 */
export async function insertChoice(workbook: Workbook, content: RowContent, catalogue: Catalogue): Promise<string> {
  const found = await selectedTable(workbook);
  if (!found) throw new Error('There is no table under the selection. Select a cell of your job table. Nothing was written.');
  const { cells, table, hostTables } = found;
  const jobs = jobTable(cells, table, await tableAnswers(workbook, 'jobs', table.sheet), partsKnown(catalogue.index));
  const { changes, row, message } = planRow(cells, jobs, content, hostTables);
  await workbook.write(changes, 'blank');
  const { column } = table.block;
  await workbook.select({ sheet: table.sheet, address: cellAddress({ row, column }) });
  return message;
}
