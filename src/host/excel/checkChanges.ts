import { blockOf } from '../../workbook/a1';
import type { RequestCells } from '../../workbook/requestSize';
import { sheetOfChange } from '../../workbook/sheetOfChange';
import type { Change } from '../../workbook/workbook';

/**
 * Ids of the sheets that the changes go to, by name; new sheets have none. A sheet keeps its id when somebody gives it another name while
 * we write (Excel.Worksheet id: "remains the same even when the worksheet is renamed or moved").
 */
export type SheetIds = ReadonlyMap<string, string>;

function shapeMistake(change: Change): string | undefined {
  if (change.kind !== 'values' && change.kind !== 'formulas') return undefined;
  const cells: RequestCells = change.kind === 'values' ? change.values : change.formulas;
  const block = blockOf(change.at.address);
  const fits = block && cells.length === block.rows && cells.every(row => row.length === block.columns);
  return fits ? undefined : `${change.at.sheet}!${change.at.address} does not have the shape of what goes into it`;
}

function refuseSheet(name: string, isNew: boolean, sheet: Excel.Worksheet): void {
  if (isNew && !sheet.isNullObject) throw new Error(`There is already a sheet "${name}".`);
  if (isNew) return;
  if (sheet.isNullObject) {
    throw new Error(`Sheet "${name}" is no longer there: it was renamed or deleted. Look at the sheets, then try again.`);
  }
  if (sheet.protection.protected) {
    throw new Error(`Sheet "${name}" is protected: lift the protection (Review, Unprotect Sheet), then try again.`);
  }
}

/** Refuses before anything is written: wrong shapes, sheets missing or there already, protected sheets and workbooks. */
export async function checkChanges(context: Excel.RequestContext, changes: readonly Change[]): Promise<SheetIds> {
  const mistake = changes.map(shapeMistake).find(Boolean);
  if (mistake) throw new Error(mistake);
  const added = changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));
  const names = [...new Set([...added, ...changes.map(sheetOfChange)])];
  const sheets = names.map(name => context.workbook.worksheets.getItemOrNullObject(name));
  for (const sheet of sheets) sheet.load('id,protection/protected');
  const { protection } = context.workbook;
  protection.load('protected');
  await context.sync();
  if (protection.protected && changes.some(({ kind }) => kind === 'addSheet' || kind === 'removeSheet')) {
    throw new Error(
      'The workbook is protected, so that sheets cannot be added: lift it (Review, Protect Workbook), then try again.',
    );
  }
  names.forEach((name, index) => refuseSheet(name, added.includes(name), sheets[index]!));
  return new Map(names.flatMap((name, index) => (added.includes(name) ? [] : [[name, sheets[index]!.id] as const])));
}
