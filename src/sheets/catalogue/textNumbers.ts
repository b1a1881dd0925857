import { cellReader, type FieldReader } from '../../core/catalogue/cellReader';
import { isFilled, readHeadings } from '../../core/catalogue/headings';
import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { inQuotes } from '../../workbook/inQuotes';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import { rawTableOf } from './workbookCatalogue';

/** Longest text between quotes that Excel takes in a formula. Source: Microsoft, "Excel specifications and limits", from memory. */
const LONGEST_TEXT = 255;

/** Numbers of a table that its cells hold as text (`4,85`), read as the catalogue reads them. */
export class TextNumbers {
  private readonly readers: ReadonlyMap<number, FieldReader>;

  constructor(
    name: TableName,
    private readonly content: RangeContent,
  ) {
    const { columns } = readHeadings(catalogueTables[name], rawTableOf(content));
    // Formulas take a cell in its column's own unit, as they take a number.
    this.readers = new Map(columns.map(column => [column.index, cellReader(column, undefined)]));
  }

  /** A cell that holds text, with the number that the catalogue reads from it; undefined where it holds none or something else. */
  at(row: number, column: number): { readonly text: string; readonly value: number } | undefined {
    const text = this.content.values[row]?.[column];
    if (typeof text !== 'string' || !isFilled(text) || text.length > LONGEST_TEXT) return undefined;
    const value = this.readers.get(column)?.(text);
    return typeof value === 'number' ? { text, value } : undefined;
  }

  /**
   * A cell's number for a formula, without `=`. A spreadsheet would not multiply a text, or take its decimal comma for a mark of thousands:
   * where the cell holds one, the number that was read counts as long as the same text is there, and a number that replaces it at once.
   */
  formula(reference: string, row: number, column: number): string {
    const cell: CellValue = this.content.values[row]?.[column] ?? '';
    if (typeof cell !== 'string' || !isFilled(cell)) return reference;
    const read = this.at(row, column);
    const otherwise = read ? `IF(${reference}=${inQuotes(read.text)},${read.value},NA())` : 'NA()';
    return `IF(ISNUMBER(${reference}),${reference},${otherwise})`;
  }
}
