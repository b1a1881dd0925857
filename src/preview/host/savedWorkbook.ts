import type { Univer } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import { FormulaDataModel } from '@univerjs/engine-formula';
import type { FileCell } from '../xlsx/fileCell';
import type { SavedWorkbook } from '../xlsx/writeXlsx';

/**
 * The open workbook of the spreadsheet's engine, with all that a file needs.
 * @param opened cells of the file it was opened from
 */
export function savedWorkbook(univer: Univer, api: FUniver, opened: readonly FileCell[] = []): SavedWorkbook {
  const inFile = new Map(opened.filter(cell => cell.formula).map(cell => [`${cell.sheet}!${cell.address}`, cell]));
  const data = api.getActiveWorkbook()!.save();
  const model = univer.__getInjector().get(FormulaDataModel);
  const filled = model.getArrayFormulaCellData()[data.id] ?? {};
  const blocks = model.getArrayFormulaRange()[data.id] ?? {};
  return {
    data,
    formulaOf: (sheet, row, column) => model.getFormulaStringByCell(row, column, sheet, data.id) ?? undefined,
    blockOf: (sheet, row, column) => blocks[sheet]?.[row]?.[column] ?? undefined,
    valueInFile(sheet, address, formula) {
      const cell = inFile.get(`${sheet}!${address}`);
      return cell?.formula === formula ? cell.cached : undefined;
    },
    filledCell: (sheet, row, column) => filled[sheet]?.[row]?.[column],
  };
}
