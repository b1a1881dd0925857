/** What a host passes for an argument: a block of cells, or nothing. */
export type PassedCells = readonly (readonly unknown[])[] | null | undefined;

/** A clock that stands still while the user edits a cell, since a host does not answer then. */
export interface PausableClock {
  pause(): void;
  resume(): void;
}

/** Where the tables named in the workbook's CATALOGUE formulas can be read again. Only ever reads. */
export interface CatalogueSource {
  /**
   * The tables of each CATALOGUE formula of the workbook, in the order of the arguments (null where one is left out); that of the cell
   * named Catalogue first. Cells are as a host passes them to a function.
   * @param clock is paused while the host waits for the user to leave a cell
   */
  calls(clock: PausableClock): AsyncIterable<readonly PassedCells[]>;
}
