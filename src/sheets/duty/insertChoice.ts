import type { Catalogue } from '../../core/catalogue/catalogue';
import { nameText } from '../../core/catalogue/nameText';
import { Decimal } from '../../core/units/decimal';
import { convertMeasure, measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { addressOf } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import { columnsView } from '../table/columnsView';
import { proposeColumns } from '../table/proposeColumns';
import type { Choice } from './candidates';
import { UNITS_OF } from './dutyUnits';
import { planRow, type RowContent } from './planRow';
import type { Demand } from './readDuty';

const CELL_PLACES = 4;

function inBoth(value: Decimal, unit: MeasureUnit): Readonly<Record<LengthUnit, number>> {
  const as = (symbol: LengthUnit) =>
    convertMeasure(value, unit, measureUnit('length', symbol)!).toDecimalPlaces(CELL_PLACES).toNumber();
  return { mm: as('mm'), in: as('in') };
}

/** A chosen assembly as the cells of a row take it. */
export function rowContent(catalogue: Catalogue, demand: Demand, { hose, ends, lengths }: Choice): RowContent {
  const cutOff = (index: 0 | 1) => inBoth(new Decimal(ends[index].fitting.cutOff), catalogue.units.length);
  return {
    hose: nameText(hose.hose),
    fittingA: nameText(ends[0].fitting.fitting),
    fittingB: nameText(ends[1].fitting.fitting),
    quantity: demand.quantity.toNumber(),
    overall: lengths.overall && inBoth(lengths.overall, UNITS_OF[demand.units].length),
    cutOffA: cutOff(0),
    cutOffB: cutOff(1),
    unit: catalogue.units.length.symbol === 'in' ? 'in' : 'mm',
  };
}

/**
 * Writes a chosen assembly as the next row of the table under the selection, and selects that row.
 * @returns what was written, in words
 * @throws Error with a sentence where nothing was written
 */
export async function insertChoice(workbook: Workbook, content: RowContent): Promise<string> {
  const view = await columnsView(workbook);
  if (view.status !== 'ready') {
    throw new Error('There is no table under the selection. Select a cell of your job table. Nothing was written.');
  }
  const { used, table, hostTables } = view;
  const { changes, row, told } = planRow(used, table, proposeColumns(used, table), content, hostTables);
  await workbook.write(changes);
  const { column } = table.block;
  await workbook.select({ sheet: table.sheet, address: addressOf({ row, column, rows: 1, columns: 1 }) });
  return told;
}
