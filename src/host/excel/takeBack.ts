import type { Change } from '../../workbook/workbook';
import type { SheetIds } from './checkChanges';
import { run } from './run';
import { putBackCells, type CellsBefore } from './cellsBefore';

/** What stood in the workbook before changes were written. */
export interface Before {
  readonly ids: SheetIds;
  readonly cells: CellsBefore;
  /** What names referred to that the changes move; a name that they add is not in it. */
  readonly names: ReadonlyMap<string, string>;
}

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

/** Names that could not be put back: new ones are deleted, moved ones get what they referred to. */
async function takeBackNames(changes: readonly Change[], before: Before): Promise<readonly string[]> {
  const left: string[] = [];
  for (const name of new Set(changes.flatMap(change => (change.kind === 'name' ? [change.name] : [])))) {
    const formula = before.names.get(name);
    const isBack =
      formula === undefined
        ? await remove(context => context.workbook.names.getItemOrNullObject(name))
        : await run(async context => {
            context.workbook.names.getItem(name).formula = formula;
            await context.sync();
            return true;
          }).catch(() => false);
    if (!isBack) left.push(`the name ${name}`);
  }
  return left;
}

const MOST_NAMED = 12;

const listed = (places: readonly string[]) =>
  places.length > MOST_NAMED
    ? `${places.slice(0, MOST_NAMED).join(', ')} and ${places.length - MOST_NAMED} more`
    : places.join(', ');

/** Ranges of standing sheets of which the looks were to change: these are not put back. */
function looks(changes: readonly Change[], ids: SheetIds): readonly string[] {
  return [
    ...new Set(
      changes.flatMap(change => {
        if (change.kind === 'style' && ids.has(change.at.sheet)) return [`${change.at.sheet}!${change.at.address}`];
        return change.kind === 'page' && ids.has(change.sheet) ? [`the page setup of ${change.sheet}`] : [];
      }),
    ),
  ];
}

/**
 * After Excel refused a batch in its midst: what came before stands, for Excel takes nothing back by itself. Cells and names get what they
 * held; sheets that the batch added are deleted last, since that empties Excel's undo (Microsoft, "Undo support with the Excel JavaScript
 * API": Worksheet.delete).
 * @returns a sentence that says what stands in the workbook; cells that could not be put back are named one by one
 */
export async function takeBack(changes: readonly Change[], before: Before): Promise<string> {
  const cells = await putBackCells(changes, before.ids, before.cells);
  const names = await takeBackNames(changes, before);
  const sheets: string[] = [];
  for (const sheet of changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : [])).reverse()) {
    if (!(await remove(context => context.workbook.worksheets.getItemOrNullObject(sheet)))) sheets.push(sheet);
  }
  const changed = looks(changes, before.ids);
  const left = [...cells, ...names];
  const sentences = [
    sheets.length > 0 && `The new sheets ${sheets.join(', ')} are incomplete and could not be removed: delete them.`,
    left.length > 0 && `Not put back: ${listed(left)}. Look there.`,
    left.length + sheets.length === 0 && 'Nothing was written.',
    changed.length > 0 && `Colours, borders or widths may have changed in ${listed(changed)}.`,
  ].filter(Boolean);
  return sentences.join(' ');
}
