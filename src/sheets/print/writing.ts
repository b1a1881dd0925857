import type { Change } from '../../workbook/workbook';

/** What is to be written, how it is taken back, and what to say of it. */
export interface Writing {
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
  readonly message: string;
}
