/**
 * Whether the add-in starts whenever this workbook is opened; undefined where this Office cannot say.
 * Source: learn.microsoft.com, office/dev/add-ins/develop/run-code-on-document-open (shared runtime 1.1): kept with the document, and not
 * in force before the add-in was opened in it once.
 */
export async function startsWithWorkbook(): Promise<boolean | undefined> {
  if (typeof Office === 'undefined' || typeof Office.addin?.getStartupBehavior !== 'function') return undefined;
  try {
    return (await Office.addin.getStartupBehavior()) === Office.StartupBehavior.load;
  } catch {
    return undefined;
  }
}

/**
 * Sets whether the add-in starts with this workbook. A person's choice, never ours: whoever opens the workbook and may not load the add-in
 * gets an error at once (OfficeDev/office-js issue 3558).
 */
export function startWithWorkbook(starts: boolean): Promise<void> {
  return Office.addin.setStartupBehavior(starts ? Office.StartupBehavior.load : Office.StartupBehavior.none);
}
