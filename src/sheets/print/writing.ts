import type { Change } from '../../workbook/workbook';

/** What is to be written, how it is taken back, and what to say of it. */
export interface Writing {
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
  readonly message: string;
}

/** A new sheet, which goes again when it is taken back. */
export const newSheetWriting = (sheet: string, changes: readonly Change[], message = `Written: ${sheet}.`): Writing => ({
  changes,
  undo: [{ kind: 'removeSheet', sheet }],
  message,
});
