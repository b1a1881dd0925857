import type { Change } from '../../workbook/workbook';
import { run } from './run';

/** Names that the changes define and that are not in the workbook before them. */
export type NewNames = ReadonlySet<string>;

const addedSheets = (changes: readonly Change[]) => changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));

/** Deletes one sheet or name that may be there; false where that is refused. */
async function remove(find: (context: Excel.RequestContext) => Excel.Worksheet | Excel.NamedItem): Promise<boolean> {
  try {
    await run(async context => {
      const item = find(context);
      item.load('name');
      await context.sync();
      if (!item.isNullObject) item.delete();
      await context.sync();
    });
    return true;
  } catch {
    return false;
  }
}

const listed = (places: readonly string[]) =>
  places.length > 4 ? `${places.slice(0, 3).join(', ')} and ${places.length - 3} more ranges` : places.join(', ');

/** Ranges and names of the workbook as it was that the changes would have changed. */
function reached(changes: readonly Change[], added: readonly string[], newNames: NewNames): readonly string[] {
  const places = changes.flatMap(change => {
    if (change.kind === 'name') return newNames.has(change.name) ? [] : [`the name ${change.name}`];
    const isCells = change.kind === 'values' || change.kind === 'formulas';
    return isCells && !added.includes(change.at.sheet) ? [`${change.at.sheet}!${change.at.address}`] : [];
  });
  return [...new Set(places)];
}

/**
 * After Excel refused a batch in its midst: what came before stands, for Excel takes nothing back. Sheets and names that the batch added
 * are deleted; cells that stood before may hold something else now, which is said.
 * @returns a sentence that says what stands in the workbook
 */
export async function takeBackAdded(changes: readonly Change[], newNames: NewNames): Promise<string> {
  const added = addedSheets(changes);
  for (const name of newNames) await remove(context => context.workbook.names.getItemOrNullObject(name));
  const left: string[] = [];
  for (const sheet of [...added].reverse()) {
    if (!(await remove(context => context.workbook.worksheets.getItemOrNullObject(sheet)))) left.push(sheet);
  }
  const places = reached(changes, added, newNames);
  const sentences = [
    left.length > 0 && `The new sheets ${left.join(', ')} are not whole and could not be removed: delete them.`,
    places.length > 0 && `Part of it may stand in ${listed(places)}: look there, or take it back with Undo (Ctrl+Z).`,
  ].filter(Boolean);
  return sentences.length > 0 ? sentences.join(' ') : 'Nothing of it stands in the workbook.';
}
