/** A row that cannot be used, and why. */
export interface RowProblem {
  readonly row: number;
  readonly sentence: string;
}
