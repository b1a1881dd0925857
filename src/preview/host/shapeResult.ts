import {
  ArrayValueObject,
  BooleanValueObject,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
  type ErrorType,
} from '@univerjs/engine-formula';
import { errorSentence } from '../../workbook/errorSentence';

/** What a cell keeps beside an error value: the code it belongs to, and its sentence. */
export interface CellNote {
  readonly error: string;
  readonly sentence: string;
}

const RETURNABLE = new Set(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!']);
const WITH_SENTENCE = new Set(['#VALUE!', '#N/A']);

/** An error value for a cell; like Excel, only #VALUE! and #N/A keep their sentence and only five codes can be returned. */
export function errorValue(code: string, sentence?: string): BaseValueObject {
  const error = RETURNABLE.has(code) ? code : '#VALUE!';
  const kept = WITH_SENTENCE.has(error) && sentence ? sentence : '';
  const value = ErrorValueObject.create(error as ErrorType, kept);
  return kept ? value.withCustomData({ error, sentence: kept } satisfies CellNote) : value;
}

function isCellError(value: unknown): value is { code: string; message?: string } {
  return typeof value === 'object' && value !== null && typeof (value as { code?: unknown }).code === 'string';
}

function cellValue(cell: unknown): BaseValueObject {
  if (cell === null || cell === undefined) return StringValueObject.create('');
  if (typeof cell === 'string') return StringValueObject.create(cell);
  if (typeof cell === 'boolean') return BooleanValueObject.create(cell);
  if (typeof cell === 'number') return Number.isFinite(cell) ? NumberValueObject.create(cell) : errorValue('#NUM!');
  if (isCellError(cell)) return errorValue(cell.code, cell.message);
  return errorValue('#VALUE!', 'the function gave a value that no cell can hold');
}

/**
 * What a function returned, as the spreadsheet's engine takes it: text stays text, a block spills, a CustomFunctions.Error becomes
 * an error value with its sentence.
 */
export function shapeResult(result: unknown): BaseValueObject {
  if (!Array.isArray(result)) return cellValue(result);
  const rows = result as unknown[][];
  const width = Array.isArray(rows[0]) ? rows[0].length : 0;
  if (width === 0 || rows.some(row => !Array.isArray(row) || row.length !== width)) {
    return errorValue('#VALUE!', 'the function gave rows of unequal length');
  }
  if (rows.length === 1 && width === 1) return cellValue(rows[0]![0]);
  return ArrayValueObject.create({
    calculateValueList: rows.map(row => row.map(cellValue)),
    rowCount: rows.length,
    columnCount: width,
    unitId: '',
    sheetId: '',
    row: 0,
    column: 0,
  });
}

/** What a function threw, as an error value; anything but a CustomFunctions.Error is a defect and shows as #VALUE!, as in Excel. */
export function shapeThrown(thrown: unknown): BaseValueObject {
  if (isCellError(thrown) && thrown.code.startsWith('#')) return errorValue(thrown.code, thrown.message);
  return errorValue('#VALUE!', `the function failed: ${errorSentence(thrown)}`);
}
