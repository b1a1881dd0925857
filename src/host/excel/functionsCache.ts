/**
 * Excel keeps functions.json and functions.js for up to 24 hours, the pane's page for less; a workbook with this setting makes Excel fetch
 * them anew when it is opened. Only in a shared runtime, and not for good, since it costs time at each opening.
 * Source: learn.microsoft.com, office/dev/add-ins/excel/custom-functions-troubleshooting, "Clear the custom functions cache when your add-in
 * runs"; OfficeDev/office-js issue 2777.
 */
const SETTING = 'Office.ForceRefreshCustomFunctionsCache';

const settings = (): Office.Settings | undefined =>
  typeof Office === 'undefined' ? undefined : (Office.context?.document as Office.Document | undefined)?.settings;

/** Whether this Office has the setting's place. */
export const canRefreshFunctions = (): boolean =>
  settings() !== undefined && Office.context.requirements.isSetSupported('SharedRuntime', '1.1');

/** Whether this workbook makes Excel fetch the functions anew. */
export const refreshesFunctions = (): boolean => canRefreshFunctions() && settings()!.get(SETTING) === true;

/** Sets whether this workbook makes Excel fetch the functions anew when it is opened next. */
export function refreshFunctions(refresh: boolean): Promise<void> {
  const kept = settings()!;
  kept.set(SETTING, refresh);
  return new Promise((resolve, reject) => {
    kept.saveAsync(({ status, error }) => {
      if (status === Office.AsyncResultStatus.Failed) reject(new Error(error.message));
      else resolve();
    });
  });
}
