import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent } from '../../workbook/workbook';
import { hoseKey } from '../jobs/cutLine';
import { lengthOfCell } from '../table/lengthCell';
import { cellOf, dataRows, findTable, textOf } from '../table/sheetTable';

const HEADINGS = { hose: /^hose$/, reelLength: /^reel length$/ } as const;

/** Reel lengths of the catalogue's sheet of hoses, in `unit`, by hose (`hoseKey`); rows that cannot be read are left out. */
export function reelLengths(hoses: RangeContent | undefined, unit: LengthUnit): ReadonlyMap<string, Decimal> {
  const table = findTable(hoses, HEADINGS, ['hose', 'reelLength']);
  const lengths = new Map<string, Decimal>();
  if (!table) return lengths;
  for (const row of dataRows(table)) {
    try {
      const length = lengthOfCell(cellOf(table, row, 'reelLength'), 'reel length', table.columns.reelLength!.unit, unit);
      if (length) lengths.set(hoseKey(textOf(table, row, 'hose')), length);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
    }
  }
  return lengths;
}
