import type { RawTable } from '../../core/catalogue/rawTable';
import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { addressOf, blockOf, overlap, type Block } from '../../host/a1';
import type { Change, RangeAddress, RangeContent } from '../../host/workbook';
import type { StandingTable } from '../catalogue/standingCatalogue';
import { blockOfContent, cellName, filledCells, formulaAt, valueAt, type Cell } from './filledCells';
import type { ChosenTable } from './loadedCatalogue';
import { withOwnColumns, type WithOwnColumns } from './ownColumns';
import { CannotWrite, type PartsWorkbook } from './partsWorkbook';
import { roomBelow } from './roomBelow';
import { newTableLooks, restoringChanges, tableChanges } from './tableChanges';
import { tableGrid, type TableGrid } from './tableGrid';

/** How one table gets into the workbook. */
export interface TablePlan {
  readonly table: TableName;
  readonly sheet: string;
  /** The sheet comes new. */
  readonly isNew: boolean;
  /** Nothing where the table stands as it should. */
  readonly changes: readonly Change[];
  /** What puts back what stood there. */
  readonly restoring: readonly Change[];
  /** The range that CATALOGUE reads afterwards, with room to append. */
  readonly reads: RangeAddress;
  readonly overwrites: readonly string[];
  readonly told: readonly string[];
}

const title = (table: TableName) => catalogueTables[table].sheet;
const rowCount = (rows: number) => `${rows} ${rows === 1 ? 'row' : 'rows'}`;

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
    told: [
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
  const told = [`${title(table)}: ${rowCount(block.rows - 1)} are read where they stand, ${at.sheet}!${reads.address}.`];
  return { table, sheet: at.sheet, isNew: false, changes: [], restoring: [], reads, overwrites: [], told };
}

const headingIndex = (raw: RawTable) => raw.findIndex(cells => cells.some(cell => cell !== null));

/** Where a standing table is rewritten: from its heading row, as far as the old and the new one reach. */
function placeOf({ content }: StandingTable, grid: TableGrid, heading: number): { written: Block; touched: Block } {
  const { row, column } = content;
  const written = { row: row + heading, column, rows: grid.cells.length, columns: grid.cells[0]!.length };
  const old = blockOfContent(content);
  const touched = {
    ...written,
    rows: Math.max(written.rows, old.rows - heading),
    columns: Math.max(written.columns, old.columns),
  };
  return { written, touched };
}

function isUnchanged(workbook: PartsWorkbook, grid: TableGrid, { sheet, block }: { sheet: string; block: Block }): boolean {
  const content = workbook.contents.get(sheet);
  for (let row = 0; row < block.rows; row++) {
    for (let column = 0; column < block.columns; column++) {
      const cell = { row: block.row + row, column: block.column + column };
      if (valueAt(content, cell) !== (grid.cells[row]?.[column] ?? '') || formulaAt(content, cell) !== '') return false;
    }
  }
  return true;
}

function obstacles(standing: StandingTable, touched: Block, { standing: catalogue }: PartsWorkbook): void {
  const { sheet } = standing.content;
  for (const other of catalogue?.tables ?? []) {
    if (other.table === standing.table || other.content.sheet !== sheet) continue;
    if (overlap(blockOfContent(other.content), touched)) {
      throw new CannotWrite(
        `${title(standing.table)} would grow into ${title(other.table)} on sheet ${sheet}. Move one of them to a sheet of its own and correct the CATALOGUE formula, then load again.`,
      );
    }
  }
  const cell = catalogue && catalogue.cell.sheet === sheet ? blockOf(catalogue.cell.address) : undefined;
  if (cell && overlap(cell, touched)) {
    throw new CannotWrite(
      `${title(standing.table)} would grow over the Catalogue cell ${sheet}!${catalogue!.cell.address}. Move that cell, then load again.`,
    );
  }
}

function overText(sheet: string, cells: readonly Cell[]): string {
  const others = cells.length > 1 ? ` and ${cells.length - 1} more filled cells` : '';
  return `${sheet}!${cellName(cells[0]!)}${others} outside the old table are written over.`;
}

interface Rewriting {
  readonly grid: TableGrid;
  readonly own: WithOwnColumns;
  readonly written: Block;
  readonly touched: Block;
  readonly content: RangeContent | undefined;
}

/** What rewriting a table does, a sentence each. */
function toldOfRewriting({ table, loaded }: ChosenTable, { grid, own, written, touched, content }: Rewriting): string[] {
  const sheet = content?.sheet ?? title(table);
  const formulas = filledCells(content, touched, []).filter(cell => formulaAt(content, cell) !== '').length;
  const lost = own.lost > 0 ? `; filled cells of rows that come no more: ${own.lost}` : '';
  const sentences = [
    `${rowCount(written.rows - 1)} of ${loaded.label} go to ${sheet}!${addressOf(written)}.`,
    own.kept.length > 0 && `your own columns stay with their rows: ${own.kept.join(', ')}${lost}.`,
    grid.dropped.length > 0 && `${grid.dropped.join(', ')} come no more.`,
    formulas > 0 && `${formulas} ${formulas === 1 ? 'formula is' : 'formulas are'} replaced by values.`,
  ];
  return sentences.flatMap(sentence => (sentence ? [`${title(table)}: ${sentence}`] : []));
}

function planRewriting(chosen: ChosenTable, standing: StandingTable, workbook: PartsWorkbook): TablePlan {
  const { table, raw } = chosen;
  const { sheet } = standing.content;
  const heading = Math.max(0, headingIndex(standing.raw));
  const own = withOwnColumns(table, raw, standing.raw.slice(heading));
  const grid = tableGrid(catalogueTables[table], own.raw, standing.raw[heading] ?? []);
  const { written, touched } = placeOf(standing, grid, heading);
  const content = workbook.contents.get(sheet);
  const range = blockOf(standing.at.address)!;
  const spared = [range, blockOfContent(standing.content)];
  obstacles(standing, touched, workbook);
  const beside = filledCells(content, touched, spared);
  const below = filledCells(content, { ...written, row: written.row + written.rows, rows: Number.MAX_SAFE_INTEGER }, spared);
  const reads = {
    sheet,
    address: addressOf({ ...written, columns: Math.max(written.columns, range.columns), rows: roomBelow(written, below, range) }),
  };
  const plain = { table, sheet, isNew: false, reads } as const;
  if (isUnchanged(workbook, grid, { sheet, block: touched })) {
    return { ...plain, changes: [], restoring: [], overwrites: [], told: [`${title(table)} stays as it is.`] };
  }
  const told = toldOfRewriting(chosen, { grid, own, written, content, touched });
  return {
    ...plain,
    changes: tableChanges(grid, sheet, touched, false),
    restoring: restoringChanges(content, sheet, touched),
    overwrites: beside.length > 0 ? [overText(sheet, beside)] : [],
    told,
  };
}

/** How one table gets into the workbook. */
export function planTable(chosen: ChosenTable, workbook: PartsWorkbook, taken: string[]): TablePlan {
  if (chosen.loaded.at && !chosen.isMapped) return planReading(chosen, workbook);
  const standing = workbook.standing?.tables.find(({ table }) => table === chosen.table);
  return standing ? planRewriting(chosen, standing, workbook) : planNew(chosen, workbook, taken);
}
