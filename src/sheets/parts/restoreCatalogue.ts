import { blockOf } from '../../workbook/a1';
import type { Change, Workbook } from '../../workbook/workbook';
import { valueAt } from './filledCells';
import type { PartsPlan } from './planParts';
import type { TablePlan } from './tablePlan';
import { requestPieces } from './requestPieces';
import { plainValue } from '../../workbook/cellWords';

type Values = Extract<Change, { kind: 'values' }>;

const isValues = (change: Change): change is Values => change.kind === 'values';

/** Whether the cells hold what a change would put there; cells that get a formula back are passed over. */
async function holds(workbook: Workbook, changes: readonly Change[]): Promise<boolean> {
  const formulas = new Set(changes.flatMap(change => (change.kind === 'formulas' ? [change.at.address] : [])));
  if (formulas.size > 0) return false;
  for (const change of changes.filter(isValues)) {
    const [content] = await workbook.read([change.at]);
    const block = blockOf(change.at.address)!;
    const same = change.values.every((cells, down) =>
      cells.every((value, across) => {
        const found = valueAt(content, { row: block.row + down, column: block.column + across });
        return plainValue(found) === value;
      }),
    );
    if (!same) return false;
  }
  return true;
}

async function restore(workbook: Workbook, { isNew, restoring }: TablePlan): Promise<boolean> {
  if (isNew) return true;
  try {
    if (await holds(workbook, restoring)) return true;
    for (const { changes } of requestPieces(restoring)) await workbook.write(changes);
    return true;
  } catch {
    return false;
  }
}

async function restoreFormula(workbook: Workbook, { cell, formulaBefore }: PartsPlan): Promise<boolean> {
  if (formulaBefore === undefined) return true;
  try {
    const [content] = await workbook.read([cell]);
    if (content!.formulas[0]![0] === formulaBefore) return true;
    await workbook.write([{ kind: 'formulas', at: cell, formulas: [[formulaBefore]] }]);
    return true;
  } catch {
    return false;
  }
}

/** Takes sheets away that were added; gives those that stay. */
async function removeSheets(workbook: Workbook, sheets: readonly string[]): Promise<readonly string[]> {
  const left: string[] = [];
  const there = new Set(await workbook.sheets().catch(() => []));
  for (const sheet of sheets.filter(each => there.has(each))) {
    await workbook.write([{ kind: 'removeSheet', sheet }]).catch(() => left.push(sheet));
  }
  return left;
}

const listed = (names: readonly string[]) => names.join(', ');

/**
 * Puts the workbook back as it was before a plan was begun, as far as the host allows it.
 * @param begun tables whose writing was begun
 * @returns a sentence that says what stands in the workbook now
 */
export async function restoreCatalogue(workbook: Workbook, plan: PartsPlan, begun: readonly TablePlan[]): Promise<string> {
  const formula = await restoreFormula(workbook, plan);
  const lost: string[] = [];
  for (const table of begun) if (!(await restore(workbook, table))) lost.push(table.sheet);
  if (lost.length > 0 || !formula) {
    const copies = plan.copies.filter(({ of }) => lost.includes(of)).map(({ sheet }) => sheet);
    return [
      lost.length > 0 && `${listed(lost)} could not be put back and may hold old and new rows.`,
      copies.length > 0 && `The old values are on ${listed(copies)}.`,
      !formula && `The formula in ${plan.cell.sheet}!${plan.cell.address} could not be put back; it was ${plan.formulaBefore}`,
      `Do not work with the catalogue until ${lost.length > 1 ? 'these are' : 'this is'} put right (Undo may do it).`,
    ]
      .filter(Boolean)
      .join(' ');
  }
  const left = await removeSheets(workbook, [...plan.newSheets].reverse());
  if (left.length === 0) return 'The workbook is as it was before.';
  return `The catalogue is as it was before. The new sheets ${listed(left)} could not be removed: nothing reads them, delete them.`;
}
