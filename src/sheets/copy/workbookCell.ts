import type { Block } from '../../workbook/a1';

/** One cell of the workbook by zero-based row and column. */
export interface WorkbookCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Names a cell among all of the workbook. */
export const placeKey = ({ sheet, row, column }: WorkbookCell): string => `${row} ${column} ${sheet}`;

/** A set of cells. */
export class CellSet {
  private readonly places = new Map<string, WorkbookCell>();

  has(place: WorkbookCell): boolean {
    return this.places.has(placeKey(place));
  }

  /** @returns true where it was not yet among them */
  add(place: WorkbookCell): boolean {
    if (this.has(place)) return false;
    this.places.set(placeKey(place), place);
    return true;
  }

  /** True where one of them lies in a block of a sheet. */
  meets(sheet: string, { row, column, rows, columns }: Block): boolean {
    if (this.size === 0) return false;
    if (rows * columns <= this.size) {
      for (let r = row; r < row + rows; r += 1) {
        for (let c = column; c < column + columns; c += 1) if (this.has({ sheet, row: r, column: c })) return true;
      }
      return false;
    }
    const isIn = (place: WorkbookCell) =>
      place.row >= row && place.row < row + rows && place.column >= column && place.column < column + columns;
    for (const place of this.places.values()) if (place.sheet === sheet && isIn(place)) return true;
    return false;
  }

  get size(): number {
    return this.places.size;
  }

  all(): IterableIterator<WorkbookCell> {
    return this.places.values();
  }
}
