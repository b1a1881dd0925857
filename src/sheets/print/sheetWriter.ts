import { addressOf } from '../../workbook/a1';
import type { CellStyle, Change, ChartSpec, PageSetup } from '../../workbook/workbook';

export type WrittenCell = string | number | boolean;

/** Collects the changes that fill one new sheet; rows and columns count from 0. */
export class SheetWriter {
  private readonly changes: Change[] = [];
  private readonly columnWidths: Change[] = [];

  constructor(private readonly sheet: string) {}

  private at(row: number, column: number, rows: number, columns: number) {
    return { sheet: this.sheet, address: addressOf({ row, column, rows, columns }) };
  }

  /** Writes a block of values; rows of unequal length are filled with blanks. */
  values(row: number, column: number, values: readonly (readonly WrittenCell[])[]): this {
    const columns = Math.max(0, ...values.map(cells => cells.length));
    if (columns === 0) return this;
    const filled = values.map(cells => [...cells, ...Array<WrittenCell>(columns - cells.length).fill('')]);
    this.changes.push({ kind: 'values', at: this.at(row, column, filled.length, columns), values: filled });
    return this;
  }

  /** Writes a block of formulas; "" leaves a cell blank. */
  formulas(row: number, column: number, formulas: readonly (readonly string[])[]): this {
    const columns = formulas[0]?.length ?? 0;
    if (columns > 0) this.changes.push({ kind: 'formulas', at: this.at(row, column, formulas.length, columns), formulas });
    return this;
  }

  /** Sets the number format of a block. */
  format(row: number, column: number, rows: number, columns: number, numberFormat: string): this {
    if (rows > 0) this.changes.push({ kind: 'format', at: this.at(row, column, rows, columns), numberFormat });
    return this;
  }

  /** Sets the looks of a block. */
  style(row: number, column: number, rows: number, columns: number, style: CellStyle): this {
    if (rows > 0) this.changes.push({ kind: 'style', at: this.at(row, column, rows, columns), style });
    return this;
  }

  /** Sets the widths of the first columns, in points. */
  widths(...widths: readonly number[]): this {
    widths.forEach((columnWidth, column) => {
      this.columnWidths.push({ kind: 'style', at: this.at(0, column, 1, 1), style: { columnWidth } });
    });
    return this;
  }

  /** Puts a chart over a block; its series are given by blocks of this sheet too. */
  chart(row: number, column: number, rows: number, columns: number, chart: ChartSpec): this {
    this.changes.push({ kind: 'chart', at: this.at(row, column, rows, columns), chart });
    return this;
  }

  /** Puts a square picture (SVG text) into the upper left of a block. */
  picture(row: number, column: number, rows: number, columns: number, svg: string, alt: string): this {
    this.changes.push({ kind: 'picture', at: this.at(row, column, rows, columns), svg, alt });
    return this;
  }

  /** Sets how the sheet is printed. */
  page(page: PageSetup): this {
    this.changes.push({ kind: 'page', sheet: this.sheet, page });
    return this;
  }

  /** All changes, in the order in which they were asked for; widths first, since rows are fitted to wrapped text when it is written. */
  done(): readonly Change[] {
    return [{ kind: 'addSheet', sheet: this.sheet }, ...this.columnWidths, ...this.changes];
  }
}
