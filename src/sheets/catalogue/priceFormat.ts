import type { Workbook } from '../../workbook/workbook';
import { currencyFormatOf, moneyFormatOf } from './currencyFormat';

/** How the workbook writes money: the selected sheet first, then the catalogue's usual sheets. */
export async function priceFormat(workbook: Workbook): Promise<string | undefined> {
  const selection = await workbook.selection();
  const sheets = [selection.sheet, ...(await workbook.sheets()).filter(name => /^(?:hoses|fittings|guards)$/i.test(name))];
  for (const sheet of sheets) {
    const format = currencyFormatOf(await workbook.used(sheet));
    if (format) return moneyFormatOf(format);
  }
  return undefined;
}
