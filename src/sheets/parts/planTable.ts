import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { addressOf, blockOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { blockOfContent, filledCells } from './filledCells';
import type { ChosenTable } from './loadedCatalogue';
import type { PartsWorkbook } from './partsWorkbook';
import { planRewriting } from './planRewriting';
import { roomBelow } from './roomBelow';
import { newTableLooks, restoringChanges, tableChanges } from './tableChanges';
import { tableGrid } from './tableGrid';
import { rowCount, title, type TablePlan } from './tablePlan';

/** The sheet of a table that has none yet: its own name, else one that says what it is. */
function newSheet(table: TableName, { contents, sheets }: PartsWorkbook, taken: string[]): { sheet: string; isNew: boolean } {
  const used = new Set(taken.map(name => name.toLowerCase()));
  const name = title(table);
  const empty = sheets.find(sheet => sheet.toLowerCase() === name.toLowerCase());
  if (empty !== undefined && contents.has(empty) && contents.get(empty) === undefined) return { sheet: empty, isNew: false };
  for (let number = 1; ; number++) {
    const wanted = number === 1 ? name : number === 2 ? `${name} data` : `${name} data ${number - 1}`;
    if (used.has(wanted.toLowerCase())) continue;
    taken.push(wanted);
    return { sheet: wanted, isNew: true };
  }
}

function planNew({ table, raw, loaded }: ChosenTable, workbook: PartsWorkbook, taken: string[]): TablePlan {
  const { sheet, isNew } = newSheet(table, workbook, taken);
  const grid = tableGrid(catalogueTables[table], raw, []);
  const block = { row: 0, column: 0, rows: grid.cells.length, columns: grid.cells[0]!.length };
  const add: Change[] = isNew ? [{ kind: 'addSheet', sheet }] : [];
  const changes = [...add, ...tableChanges(grid, sheet, block, true), ...newTableLooks(grid, sheet)];
  const reads = { sheet, address: addressOf({ ...block, rows: roomBelow(block, [], undefined) }) };
  const other = sheet === title(table) ? '' : ` (a sheet ${title(table)} is there already and stays as it is)`;
  return {
    table,
    sheet,
    isNew,
    changes,
    restoring: isNew ? [{ kind: 'removeSheet', sheet }] : restoringChanges(undefined, sheet, block),
    reads,
    overwrites: [],
    message: [
      `${title(table)}: ${rowCount(block.rows - 1)} of ${loaded.label} go to the ${isNew ? 'new' : 'empty'} sheet ${sheet}${other}.`,
    ],
  };
}

/** A range of this workbook whose headings are understood is read where it stands. */
function planReading({ table, loaded }: ChosenTable, workbook: PartsWorkbook): TablePlan {
  const at = loaded.at!;
  const block = blockOf(at.address)!;
  const others = (workbook.standing?.tables ?? [])
    .filter(each => each.table !== table)
    .map(({ content }) => blockOfContent(content));
  const content = workbook.contents.get(at.sheet);
  const spared = [block, ...others];
  const below = filledCells(content, { ...block, row: block.row + block.rows, rows: Number.MAX_SAFE_INTEGER }, spared);
  const reads = { sheet: at.sheet, address: addressOf({ ...block, rows: roomBelow(block, below, undefined) }) };
  const message = [`${title(table)}: ${rowCount(block.rows - 1)} are read where they stand, ${at.sheet}!${reads.address}.`];
  return { table, sheet: at.sheet, isNew: false, changes: [], restoring: [], reads, overwrites: [], message };
}

/** How one table gets into the workbook. */
export function planTable(chosen: ChosenTable, workbook: PartsWorkbook, taken: string[]): TablePlan {
  if (chosen.loaded.at && !chosen.isMapped) return planReading(chosen, workbook);
  const standing = workbook.standing?.tables.find(({ table }) => table === chosen.table);
  return standing ? planRewriting(chosen, standing, workbook) : planNew(chosen, workbook, taken);
}
