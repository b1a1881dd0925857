const ADVICE: Readonly<Record<string, string>> = {
  AccessDenied: 'Excel refused it: the sheet or workbook is protected or read-only. Lift the protection, then try again.',
  ItemNotFound: 'A sheet or range that this needs is no longer there.',
  InvalidArgument: 'Excel did not accept a range or a formula.',
  InvalidReference: 'A range that this needs does not exist.',
  InvalidSelection: 'Select one block of cells, then try again.',
  InvalidOperationInCellEditMode: 'Finish the cell you are editing (Enter or Esc), then try again.',
  RequestPayloadSizeLimitExceeded: 'That is too much for one go in Excel (5 MB on the web). Select fewer rows.',
  RangeExceedsLimit: 'That is more cells than Excel hands over in one go. Select fewer rows.',
  MergedRangeConflict: 'There are merged cells in the way: unmerge them, then try again.',
  FilteredRangeConflict: 'A filter is in the way: clear it, then try again.',
  InactiveWorkbook: 'Another workbook is in front: come back to this one, then try again.',
  ResponsePayloadSizeLimitExceeded: 'That is too much for one go in Excel (5 MB on the web). Select fewer rows.',
};

/** A refusal of Excel in words a user can act on; `code` is Office.js's own. */
export class ExcelRefusal extends Error {
  constructor(
    readonly code: string,
    detail: string,
  ) {
    super(ADVICE[code] ?? `Excel reported an error: ${detail}`);
    this.name = 'ExcelRefusal';
  }
}

/** What Excel threw, in words where it is a refusal of its own. */
export function refusalOf(error: unknown): unknown {
  const code = (error as { code?: unknown } | null)?.code;
  if (error instanceof ExcelRefusal || typeof code !== 'string') return error;
  return new ExcelRefusal(code, error instanceof Error ? error.message : code);
}

/**
 * Runs a batch in Excel, after the cell that is being edited. What one sync sends is one undo step as it is. `mergeUndoGroup` (ExcelApi
 * 1.20) would join several syncs, but refuses a whole batch (UndoNotSupported) that deletes a sheet or writes some hundred formulas.
 */
export async function run<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  try {
    return await Excel.run({ delayForCellEdit: true }, batch);
  } catch (error) {
    throw refusalOf(error);
  }
}
