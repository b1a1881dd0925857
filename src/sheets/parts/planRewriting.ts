import type { RawTable } from '../../core/catalogue/rawTable';
import { catalogueTables } from '../../core/catalogue/tables/catalogueTables';
import { addressOf, blockOf, overlap, type Block, type CellPlace, cellAddress } from '../../workbook/a1';
import type { RangeContent } from '../../workbook/workbook';
import type { CatalogueTable } from '../catalogue/workbookCatalogue';
import { blockOfContent, filledCells, formulaAt, valueAt } from './filledCells';
import type { ChosenTable } from './loadedCatalogue';
import { withOwnColumns, type WithOwnColumns } from './ownColumns';
import { CannotWrite, type PartsWorkbook } from './partsWorkbook';
import { roomBelow } from './roomBelow';
import { restoringChanges, restoringShares, tableChanges } from './tableChanges';
import { tableGrid, type TableGrid } from './tableGrid';
import type { Spilled } from './spilledBlocks';
import { rowCount, title, type TablePlan } from './tablePlan';

const headingIndex = (raw: RawTable) => raw.findIndex(cells => cells.some(cell => cell !== null));

/** Where a standing table is rewritten: from its heading row, as far as the old and the new one reach. */
function placeOf({ content }: CatalogueTable, grid: TableGrid, heading: number): { written: Block; touched: Block } {
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

function obstacles(standing: CatalogueTable, touched: Block, { standing: catalogue }: PartsWorkbook): void {
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

function overText(sheet: string, cells: readonly CellPlace[]): string {
  const others = cells.length > 1 ? ` and ${cells.length - 1} more filled cells` : '';
  return `${sheet}!${cellAddress(cells[0]!)}${others} outside the old table are overwritten.`;
}

interface Rewriting {
  readonly grid: TableGrid;
  readonly own: WithOwnColumns;
  readonly written: Block;
  readonly touched: Block;
  readonly content: RangeContent | undefined;
  readonly spilled: readonly Spilled[];
}

/** What rewriting a table does, a sentence each. */
function rewritingMessage(
  { table, loaded }: ChosenTable,
  { grid, own, written, touched, content, spilled }: Rewriting,
): string[] {
  const sheet = content?.sheet ?? title(table);
  const formulas = filledCells(content, touched, []).filter(cell => formulaAt(content, cell) !== '').length;
  const lost = own.lost > 0 ? `; filled cells of rows that are no longer in the file: ${own.lost}` : '';
  const sentences = [
    `${rowCount(written.rows - 1)} of ${loaded.label} go to ${sheet}!${addressOf(written)}.`,
    own.kept.length > 0 && `your own columns stay with their rows: ${own.kept.join(', ')}${lost}.`,
    grid.dropped.length > 0 &&
      `${grid.dropped.length === 1 ? 'column' : 'columns'} ${grid.dropped.join(', ')} ${grid.dropped.length === 1 ? 'is' : 'are'} no longer in the file.`,
    ...spilled.map(({ from, block }) => `what the formula in ${cellAddress(from)} fills, ${addressOf(block)}, becomes values.`),
    formulas > 0 && `${formulas} ${formulas === 1 ? 'formula is' : 'formulas are'} replaced by values.`,
  ];
  return sentences.flatMap(sentence => (sentence ? [`${title(table)}: ${sentence}`] : []));
}

/** A table that stands is rewritten in place: never renamed, since every formula would go along. */
export function planRewriting(chosen: ChosenTable, standing: CatalogueTable, workbook: PartsWorkbook): TablePlan {
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
    return { ...plain, changes: [], restoring: [], overwrites: [], message: [`${title(table)} stays as it is.`] };
  }
  const spilled = (workbook.spilled.get(sheet) ?? []).filter(({ block }) => overlap(block, touched));
  const message = rewritingMessage(chosen, { grid, own, written, content, touched, spilled });
  return {
    ...plain,
    changes: tableChanges(grid, sheet, touched, false, content),
    restoring: [...restoringChanges(content, sheet, touched, spilled), ...restoringShares(grid, content, sheet, touched)],
    overwrites: beside.length > 0 ? [overText(sheet, beside)] : [],
    message,
  };
}
