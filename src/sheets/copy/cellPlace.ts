import { addressOf } from '../../workbook/a1';

/** One cell of the workbook by zero-based row and column. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Address of a place, without its sheet. */
export const addressOfPlace = ({ row, column }: CellPlace): string => addressOf({ row, column, rows: 1, columns: 1 });

/** A set of cells. */
export class CellSet {
  private readonly places = new Map<string, CellPlace>();

  private keyOf({ sheet, row, column }: CellPlace): string {
    return `${row} ${column} ${sheet}`;
  }

  has(place: CellPlace): boolean {
    return this.places.has(this.keyOf(place));
  }

  /** @returns true where it was not yet among them */
  add(place: CellPlace): boolean {
    if (this.has(place)) return false;
    this.places.set(this.keyOf(place), place);
    return true;
  }

  get size(): number {
    return this.places.size;
  }

  all(): IterableIterator<CellPlace> {
    return this.places.values();
  }
}
