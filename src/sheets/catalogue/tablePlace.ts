import { headingKey, partKey } from '../../core/catalogue/partName';
import { splitHeading } from '../../core/units/headingUnit';
import { addressOf, cellAddress } from '../../workbook/a1';
import type { CellValue, RangeAddress, RangeContent } from '../../workbook/workbook';

/** Where things stand in a table of the catalogue: rows and columns are positions in its content. */
export class TablePlace {
  readonly headingRow: number;

  constructor(readonly content: RangeContent) {
    const first = content.values.findIndex(row => row.some(cell => cell !== ''));
    this.headingRow = Math.max(0, first);
  }

  get headings(): readonly CellValue[] {
    return this.content.values[this.headingRow] ?? [];
  }

  /** The column of a heading, its unit not counted; undefined where the table has none. */
  column(heading: string): number | undefined {
    const wanted = headingKey(heading);
    const found = this.headings.findIndex(cell => typeof cell === 'string' && headingKey(splitHeading(cell).name) === wanted);
    return found < 0 ? undefined : found;
  }

  /** What stands in brackets behind a heading. */
  unit(heading: string): string | undefined {
    const column = this.column(heading);
    return column === undefined ? undefined : splitHeading(String(this.headings[column])).bracket;
  }

  /** Rows under the headings in which the column of `heading` holds that name. */
  rows(heading: string, name: string): readonly number[] {
    const column = this.column(heading);
    if (column === undefined) return [];
    return this.dataRows().filter(row => {
      const cell = this.content.values[row]![column]!;
      return typeof cell !== 'object' && partKey(String(cell)) === partKey(name);
    });
  }

  /** First row of every name in the column of `heading`, by partKey. */
  rowsByName(heading: string): ReadonlyMap<string, number> {
    const column = this.column(heading);
    const found = new Map<string, number>();
    if (column === undefined) return found;
    for (const row of this.dataRows()) {
      const cell = this.content.values[row]![column]!;
      const key = typeof cell === 'object' ? '' : partKey(String(cell));
      if (key !== '' && !found.has(key)) found.set(key, row);
    }
    return found;
  }

  /** All rows under the headings. */
  dataRows(): readonly number[] {
    return Array.from(
      { length: Math.max(0, this.content.values.length - this.headingRow - 1) },
      (_, down) => this.headingRow + 1 + down,
    );
  }

  /** The address of a cell. */
  cell(row: number, column: number): RangeAddress {
    const { sheet } = this.content;
    return {
      sheet,
      address: cellAddress({ row: this.content.row + row, column: this.content.column + column }),
    };
  }

  /** A column from its heading to the last row of `range`, so that rows added there are in it; headings left out. */
  columnRange(column: number, rows: number): RangeAddress {
    const { sheet } = this.content;
    const first = this.headingRow + 1;
    return {
      sheet,
      address: addressOf({
        row: this.content.row + first,
        column: this.content.column + column,
        rows: Math.max(1, rows - first),
        columns: 1,
      }),
    };
  }
}
