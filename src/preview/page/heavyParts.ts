/** The page's heavy parts, each a file of its own; asked for twice, one is loaded once. */
export const loadPane = () => import(/* webpackChunkName: "taskpane" */ '../../taskpane/app/TaskPane');
export const loadReader = () => import(/* webpackChunkName: "xlsx" */ '../xlsx/readXlsx');
export const loadSpreadsheet = () => import(/* webpackChunkName: "spreadsheet" */ './spreadsheet');

/** Asks for all at once, so that none waits for another; what fails is told where it is needed. */
export function loadAhead(): void {
  for (const load of [loadPane, loadSpreadsheet, loadReader]) load().catch(() => undefined);
}

/** A page in the background draws nothing; it waits no longer than this. */
const LONGEST_WAIT = 200;

/** Resolves when the page has drawn what it knows by now. */
export const nextPaint = () =>
  new Promise<void>(done => {
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, LONGEST_WAIT);
  });
