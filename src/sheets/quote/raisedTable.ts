import { catalogueTables } from '../../core/catalogue/tables/catalogueTables';
import { addressOf, blockOf, fixedReference } from '../../workbook/a1';
import type { Change, RangeAddress } from '../../workbook/workbook';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';
import { pricedHeadings, type PricedTable } from '../catalogue/pricedTables';
import { TablePlace } from '../catalogue/tablePlace';
import { TextNumbers } from '../catalogue/textNumbers';

/** Rows below the data that are copied too, so that a part added to the original is in the copy. */
const SPARE_ROWS = 20;

/** A copy of a table of the catalogue on a sheet of its own: every cell follows the original, prices with a rise. */
export interface RaisedTable {
  readonly changes: readonly Change[];
  /** The whole copy, headings included. */
  readonly range: RangeAddress;
  /** A column of the copy without its headings, as a formula names it. */
  readonly column: (heading: string) => string | undefined;
}

/**
 * Copies a table by formulas.
 * @param sheet a name that is not taken
 * @param rise share by which the price of a row rises, without `=`, from the row's reference to its family
 */
export function raisedTable(
  { tables, ranges }: UsableCatalogue,
  name: PricedTable,
  sheet: string,
  rise: (family: string | undefined) => string,
): RaisedTable | undefined {
  const content = tables[name];
  if (!content) return undefined;
  const place = new TablePlace(content);
  const price = place.column(pricedHeadings(name)[1]);
  if (price === undefined) return undefined;
  const rows = Math.min(blockOf(ranges[name]!.address)!.rows, content.values.length + SPARE_ROWS);
  const columns = content.values[0]!.length;
  const original = (row: number, column: number, height: number, width: number) =>
    fixedReference({
      sheet: content.sheet,
      address: addressOf({ row: content.row + row, column: content.column + column, rows: height, columns: width }),
    });
  // Not a comparison with "": the try-out sheet's engine finds 0 equal to it.
  const copied = (reference: string) => `=IF(ISBLANK(${reference}),"",${reference})`;
  const writer = new SheetWriter(sheet);
  // Two spilled blocks beside the price keep blanks blank and take corrections of the original at once.
  for (const [first, width] of [
    [0, price],
    [price + 1, columns - price - 1],
  ] as const) {
    if (width > 0) writer.formulas(0, first, [[copied(original(0, first, rows, width))]]);
  }
  const numbers = new TextNumbers(name, content);
  const family = name === 'guards' ? undefined : place.column('Family');
  const priceFormula = (row: number) => {
    const cell = original(row, price, 1, 1);
    if (row <= place.headingRow) return copied(cell);
    const factor = rise(family === undefined ? undefined : original(row, family, 1, 1));
    return `=IF(ISBLANK(${cell}),"",IF(${cell}&""="","",${numbers.formula(cell, row, price)}*(1+${factor})))`;
  };
  writer.formulas(
    0,
    price,
    Array.from({ length: rows }, (_, row) => [priceFormula(row)]),
  );
  const formats = content.formats[place.headingRow + 1] ?? [];
  formats.forEach((format, column) => {
    if (format !== 'General' && format !== '@') writer.format(place.headingRow + 1, column, rows - 1, 1, format);
  });
  writer.style(place.headingRow, 0, 1, columns, { bold: true, fill: HEAD_FILL, wrap: true }).widths(150);
  const titleRow = place.headingRow + 1;
  writer.page({ orientation: 'landscape', titleRows: `${titleRow}:${titleRow}`, fitWidth: true });
  const first = place.headingRow + 1;
  return {
    changes: writer.done(),
    range: { sheet, address: addressOf({ row: 0, column: 0, rows, columns }) },
    column: heading => {
      const column = place.column(heading);
      const address = column !== undefined && addressOf({ row: first, column, rows: rows - first, columns: 1 });
      return address ? fixedReference({ sheet, address }) : undefined;
    },
  };
}

/** The sheet that a copy is called after. */
export const copyName = (name: PricedTable) => `What-if ${catalogueTables[name].sheet.toLowerCase()}`;
