import { dayNumber, isDateFormat, isoDate } from '../../core/units/sheetDate';
import { headingKey } from '../../core/catalogue/partName';
import { splitHeading } from '../../core/units/headingUnit';
import { catalogueTables } from '../../core/catalogue/tables/catalogueTables';
import type { CellValue } from '../../workbook/workbook';
import type { CatalogueFinding } from './catalogueFindings';
import { PRICED_TABLES, pricedHeadings, type PricedTable } from '../catalogue/pricedTables';
import { TablePlace } from '../catalogue/tablePlace';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';

/** A column of the user's own that holds dates, in a table with prices. */
export interface DateColumn {
  readonly table: PricedTable;
  /** Heading as it stands there. */
  readonly heading: string;
  /** Position in the table's content. */
  readonly column: number;
}

const EARLIEST = 20_000;
const LATEST = 73_051;

/** The day a cell says; undefined where it is no date. */
function dayOf(cell: CellValue, format: string): number | undefined {
  if (typeof cell === 'string') return dayNumber(cell);
  const isDay = typeof cell === 'number' && cell > EARLIEST && cell < LATEST && isDateFormat(format);
  return isDay ? Math.floor(cell) : undefined;
}

/** Columns that the catalogue itself does not know and that hold dates: one of them may say how old a price is. */
export function dateColumns({ tables }: UsableCatalogue): readonly DateColumn[] {
  return PRICED_TABLES.flatMap(table => {
    const content = tables[table];
    if (!content) return [];
    const place = new TablePlace(content);
    const known = new Set(Object.values(catalogueTables[table].fields).map(({ heading }) => headingKey(heading)));
    return place.headings.flatMap((heading, column) => {
      const text = typeof heading === 'string' ? heading.trim() : '';
      if (text === '' || known.has(headingKey(splitHeading(text).name))) return [];
      const filled = place.dataRows().filter(row => content.values[row]![column] !== '');
      const isDates =
        filled.length > 0 &&
        filled.every(row => dayOf(content.values[row]![column]!, content.formats[row]![column]!) !== undefined);
      return isDates ? [{ table, heading: text, column }] : [];
    });
  });
}

/**
 * Prices that are older than a day, and prices without a date.
 * @param before as `2026-01-01`
 */
export function oldPrices(found: UsableCatalogue, columns: readonly DateColumn[], before: string): readonly CatalogueFinding[] {
  const limit = dayNumber(before);
  if (limit === undefined) return [];
  return columns.flatMap(({ table, heading, column }) => {
    const content = found.tables[table]!;
    const place = new TablePlace(content);
    const [name, price] = pricedHeadings(table).map(each => place.column(each));
    if (name === undefined || price === undefined) return [];
    return place.dataRows().flatMap(row => {
      const cells = content.values[row]!;
      if (typeof cells[price] !== 'number') return [];
      const day = dayOf(cells[column]!, content.formats[row]![column]!);
      if (day !== undefined && day >= limit) return [];
      const sentence = day === undefined ? `no ${heading}` : `price of ${isoDate(day)}`;
      return [{ kind: 'old' as const, part: String(cells[name]), sentence, at: place.cell(row, column) }];
    });
  });
}
