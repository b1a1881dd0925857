import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import { number } from '../../cells/readers';
import type { RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { plainHeading, unitOfHeading } from '../table/roles';

const WORDS = {
  target: /^(target|target diameter|crimp diameter|specified diameter)$/,
  tolerance: /^(tolerance|tol\.?|± ?tolerance|tolerance ?±)(, (either way|plus or minus))?$/,
  largestSpread: /^(largest|greatest|max\.?) spread$/,
  uncertainty: /^(expanded )?uncertainty( u)?( of the mean)?$/,
  step: /^(step|change per digit|per digit)$/,
  perTurn: /^(per turn|change per turn)$/,
  lowest: /^lowest( dial)?$/,
  highest: /^highest( dial)?$/,
  largestMove: /^largest move$/,
} as const;

export type SettingName = keyof typeof WORDS;

const DIALS: readonly SettingName[] = ['lowest', 'highest', 'largestMove'];
const LONGEST_BLOCK = 25;

/** What stands once above a table: a label in one cell, its number in the cell beside it; diameters in `unit`. */
export type SettingsAbove = Readonly<Partial<Record<SettingName, Decimal>>>;

/** Reads the settings in the title block of a table; numbers that cannot be read are left out. */
export function settingsAbove(used: RangeContent, { block }: FoundTable, unit: LengthUnit): SettingsAbove {
  const found: Partial<Record<SettingName, Decimal>> = {};
  for (let row = Math.max(used.row, block.row - LONGEST_BLOCK); row < block.row; row++) {
    for (let column = used.column; column < used.column + (used.values[0]?.length ?? 0); column++) {
      const label = cellOf(used, row, column);
      const value = cellOf(used, row, column + 1);
      if (typeof label !== 'string' || typeof value === 'object' || value === '') continue;
      const name = (Object.keys(WORDS) as SettingName[]).find(each => WORDS[each].test(plainHeading(label)));
      if (!name || found[name]) continue;
      try {
        const read = number()(value, name);
        found[name] = DIALS.includes(name) ? read : convertLength(read, unitOfHeading(label) ?? unit, unit);
      } catch (error) {
        if (!(error instanceof TradeError)) throw error;
      }
    }
  }
  return found;
}
