/** Most bytes in one request: Excel on the web takes 5 MB; cells are counted generously. */
export const MOST_BYTES = 3_000_000;

export type RequestCells = readonly (readonly (string | number | boolean)[])[];

/** What cells weigh in a request. */
export const bytesOf = (cells: RequestCells): number =>
  cells.reduce((sum, row) => row.reduce<number>((part, cell) => part + 8 + 2 * String(cell).length, sum), 0);
