import { type Block, cellAddress } from '../../workbook/a1';
import type { RangeAddress, Workbook } from '../../workbook/workbook';
import { hostBlocks } from '../../workbook/hostTable';
import { workbookCatalogue } from '../catalogue/workbookCatalogue';
import { findTables } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { partsSheets, type PartsSheet } from './partsSheets';
import type { SourceSheet, SourceSheets } from './sourceSheet';
import type { WorkbookCell } from './workbookCell';

/** All that a copy is made from. */
export interface CopySource extends SourceSheets {
  /** All sheets of the workbook in order; empty ones among them. */
  readonly names: readonly string[];
  readonly definedNames: readonly { readonly name: string; readonly at: RangeAddress }[];
  /** Sheets that hold parts data, by their names. */
  readonly parts: ReadonlyMap<string, PartsSheet>;
}

/** Functions whose result is a table of its own height. */
const TABLES =
  /(?:_xldudf_HOSE_|HOSE\.)(?:CRIMPCAUSE|CONTROLLIMITS|CAPABILITY|GAUGESTUDY|FINDHOSE|FINDFITTING|FINDTHREAD|CUTPLAN|GAUGECHECK|DIALRESPONSE|TRIALDIAL|RUNSIGNALS)\s*\(/i;

/** How far a formula fills cells to the right and below. */
async function spillOf(workbook: Workbook, cells: SheetCells, row: number, column: number): Promise<Block> {
  const own = cellAddress({ row, column });
  const isFilled = async (r: number, c: number) => {
    if (r > cells.lastRow || c > cells.lastColumn || cells.formula(r, c) !== '') return false;
    const at = { sheet: cells.sheet, address: cellAddress({ row: r, column: c }) };
    return (await workbook.spillParent(at))?.address === own;
  };
  let [rows, columns] = [1, 1];
  while (await isFilled(row, column + columns)) columns += 1;
  while (await isFilled(row + rows, column)) rows += 1;
  return { row, column, rows, columns };
}

async function spillsOf(workbook: Workbook, sheets: Iterable<SourceSheet>): Promise<ReadonlyMap<string, Block>> {
  const spills = new Map<string, Block>();
  for (const sheet of sheets) {
    for (const { row, column } of eachFilledCell(sheet)) {
      if (!TABLES.test(sheet.cells.formula(row, column))) continue;
      spills.set(`${row} ${column} ${sheet.cells.sheet}`, await spillOf(workbook, sheet.cells, row, column));
    }
  }
  return spills;
}

async function sourceSheet(workbook: Workbook, name: string): Promise<SourceSheet | undefined> {
  const used = await workbook.used(name);
  if (!used) return undefined;
  const cells = new SheetCells(used, await workbook.layout(name));
  return { cells, tables: findTables(cells, hostBlocks(await workbook.tables(name))) };
}

/** Reads the whole workbook: what is left out of a copy, and what its formulas stand on, may lie on any sheet. */
export async function readCopySource(workbook: Workbook): Promise<CopySource> {
  const names = await workbook.sheets();
  const sheets = new Map<string, SourceSheet>();
  for (const name of names) {
    const sheet = await sourceSheet(workbook, name);
    if (sheet) sheets.set(name, sheet);
  }
  const [definedNames, catalogue] = [await workbook.names(), await workbookCatalogue(workbook)];
  const spills = await spillsOf(workbook, sheets.values());
  const parts = await partsSheets(workbook, { sheets, catalogue, spills });
  return { names, sheets, definedNames, catalogue, parts, spills };
}

/** Every filled cell of a sheet. */
export function* eachFilledCell({ cells }: SourceSheet): Generator<WorkbookCell> {
  for (let row = cells.used.row; row <= cells.lastRow; row += 1) {
    for (let column = cells.used.column; column <= cells.lastColumn; column += 1) {
      if (!cells.isEmpty(row, column)) yield { sheet: cells.sheet, row, column };
    }
  }
}
