import type { Block, CellPlace } from '../../workbook/a1';
import type { CellValue, RangeContent, SheetLayout } from '../../workbook/workbook';
import { spilledFrom } from './spilledFrom';

const PLAIN_LAYOUT: SheetLayout = { hiddenRows: new Set(), hiddenColumns: new Set(), isHidden: false, merges: [] };

const holds = ({ row, column, rows, columns }: Block, r: number, c: number) =>
  r >= row && r < row + rows && c >= column && c < column + columns;

/** The cells of a sheet by zero-based rows and columns, with what is merged and what is hidden. */
export class SheetCells {
  /** Merged blocks by the rows they cover: a sheet may have thousands of them. */
  private readonly mergesOfRow = new Map<number, Block[]>();
  private spills: ReadonlyMap<string, CellPlace> | undefined;

  constructor(
    readonly used: RangeContent,
    readonly layout: SheetLayout = PLAIN_LAYOUT,
  ) {
    for (const block of layout.merges) {
      for (let row = block.row; row < block.row + block.rows; row += 1) {
        const others = this.mergesOfRow.get(row);
        if (others) others.push(block);
        else this.mergesOfRow.set(row, [block]);
      }
    }
  }

  get sheet(): string {
    return this.used.sheet;
  }

  /** Last row and column that hold something. */
  get lastRow(): number {
    return this.used.row + this.used.values.length - 1;
  }

  get lastColumn(): number {
    return this.used.column + (this.used.values[0]?.length ?? 0) - 1;
  }

  /** What stands in the cell itself; blank outside the used part. */
  value(row: number, column: number): CellValue {
    return this.used.values[row - this.used.row]?.[column - this.used.column] ?? '';
  }

  formula(row: number, column: number): string {
    return this.used.formulas[row - this.used.row]?.[column - this.used.column] ?? '';
  }

  /** The cell whose formula of ours fills this one; undefined where it holds its own content. */
  filledBy(row: number, column: number): CellPlace | undefined {
    this.spills ??= spilledFrom(this.used);
    return this.spills.get(`${row} ${column}`);
  }

  /** Whether a formula gives what a cell shows: its own, or one of ours that fills it from elsewhere. */
  isComputed(row: number, column: number): boolean {
    return this.formula(row, column) !== '' || this.filledBy(row, column) !== undefined;
  }

  format(row: number, column: number): string {
    return this.used.formats[row - this.used.row]?.[column - this.used.column] ?? '';
  }

  /** The merged block that a cell belongs to; undefined for an ordinary cell. */
  merge(row: number, column: number): Block | undefined {
    return this.mergesOfRow.get(row)?.find(block => holds(block, row, column));
  }

  /** What a cell shows to the reader: of merged cells what stands in their first. */
  shown(row: number, column: number): CellValue {
    const own = this.value(row, column);
    if (own !== '') return own;
    const merge = this.merge(row, column);
    return merge ? this.value(merge.row, merge.column) : own;
  }

  /** Whether nothing at all stands in a cell, not even a formula that shows nothing. */
  isEmpty(row: number, column: number): boolean {
    const value = this.value(row, column);
    const blank = value === '' || (typeof value === 'string' && value.trim() === '');
    return blank && this.formula(row, column) === '';
  }

  isHidden(row: number): boolean {
    return this.layout.hiddenRows.has(row);
  }

  isColumnHidden(column: number): boolean {
    return this.layout.hiddenColumns.has(column);
  }
}
