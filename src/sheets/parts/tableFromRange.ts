import { addressOf } from '../../workbook/a1';
import type { RangeAddress, RangeContent } from '../../workbook/workbook';
import { rawTableOf } from '../catalogue/workbookCatalogue';
import { loadedTable, type LoadedTable } from './loadedTable';

/** A range of this workbook as a table, from its heading row on. */
export function tableFromRange(content: RangeContent, turn: number): LoadedTable {
  const { sheet, row, column } = content;
  const came = { raw: rawTableOf(content), row, column, sheet, isFile: false };
  const table = loadedTable(`${turn} ${sheet}`, `sheet ${sheet}`, sheet, came);
  const block = { row: table.firstRow, column, rows: table.raw.length, columns: table.raw[0]?.length ?? 1 };
  const at: RangeAddress = { sheet, address: addressOf(block) };
  return { ...table, at };
}
