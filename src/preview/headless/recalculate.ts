import { FormulaDataModel } from '@univerjs/engine-formula';
import type { CellValue } from '../../workbook/workbook';
import { readCell } from '../host/cellReading';
import type { FunctionsFile } from '../../workbook/functionMetadata';
import { hostFunctions } from '../host/hostFunctions';
import { cellBlockOf } from '../xlsx/address';
import type { FileCell } from '../xlsx/fileCell';
import { readXlsx } from '../xlsx/readXlsx';
import { headlessWorkbook } from './headlessWorkbook';
import { loadScript, type SiblingFile } from './loadScript';

/** The worksheet functions to calculate with. */
export interface BuiltFunctions {
  /** Text of dist/functions.js. */
  readonly script: string;
  /** Content of dist/functions.json. */
  readonly metadata: FunctionsFile;
  /** How the script loads files that stand beside it. */
  readonly sibling?: SiblingFile;
}

/** A cell of the file and what it holds after calculating everything again. */
export interface RecalculatedCell extends FileCell {
  /** Blank is "", an error value comes with its sentence. */
  readonly value: CellValue;
}

/**
 * Opens an .xlsx workbook without Excel, calculates every formula with the built worksheet functions and gives each filled cell
 * with the file's own value (`cached`) and the calculated one (`value`).
 * @param xlsx the file
 * @param functions what `npm run build` made
 * @throws UnreadableFile where the file cannot be opened
 * @example
 * const cells = await recalculate(readFileSync('samples/job-sheet.xlsx'), { script, metadata });
 * cells.filter(cell => cell.formula).every(cell => cell.value === cell.cached);
 */
export async function recalculate(xlsx: Uint8Array, functions: BuiltFunctions): Promise<RecalculatedCell[]> {
  const { data, cells } = await readXlsx(xlsx);
  const workbook = headlessWorkbook(data, hostFunctions(functions.metadata, loadScript(functions.script, functions.sibling)));
  try {
    await workbook.calculate();
    const filled = workbook.univer.__getInjector().get(FormulaDataModel).getArrayFormulaCellData()[data.id] ?? {};
    const ids = new Map(data.sheetOrder.map(id => [data.sheets[id]!.name!, id]));
    return cells.map(cell => {
      const { startRow: row, startColumn: column } = cellBlockOf(cell.address)!;
      const id = ids.get(cell.sheet)!;
      const sheet = workbook.api.getActiveWorkbook()!.getSheetBySheetId(id)!.getSheet();
      return { ...cell, value: readCell(filled[id]?.[row]?.[column] ?? sheet.getCellRaw(row, column)) };
    });
  } finally {
    workbook.dispose();
  }
}
