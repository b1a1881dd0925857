import { CellValueType, type ICellData, type Nullable } from '@univerjs/core';
import type { CellValue } from '../../workbook/workbook';
import type { CellNote } from './shapeResult';

const ERROR = /^#(?:DIV\/0!|NAME\?|VALUE!|NUM!|N\/A|CYCLE!|REF!|SPILL!|CALC!|ERROR!|GETTING_DATA|NULL!)$/;

const OWN_SENTENCES: Readonly<Record<string, string>> = {
  '#NAME?': 'The formula names a function or a name that this sheet does not have.',
  '#SPILL!': 'The result needs more cells than are free here: clear the cells below and to the right.',
  '#CYCLE!': 'The formula refers to its own cell.',
  '#REF!': 'The formula refers to cells that are no longer there.',
  '#DIV/0!': 'The formula divides by zero or by a blank cell.',
};

/** True where text is an error value. */
export function isErrorText(value: unknown): value is string {
  return typeof value === 'string' && ERROR.test(value);
}

function sentenceOf(cell: ICellData): string | undefined {
  const note = cell.custom as CellNote | null | undefined;
  return note?.error === cell.v ? note?.sentence : OWN_SENTENCES[String(cell.v)];
}

/** Value of a cell of the spreadsheet's engine; blank is "", an error comes with its sentence where there is one. */
export function readCell(cell: Nullable<ICellData>): CellValue {
  const value = cell?.v;
  if (!cell || value === null || value === undefined) return cell?.p?.body?.dataStream?.replace(/\r\n$/, '') ?? '';
  if (cell.t === CellValueType.BOOLEAN) return value === 1 || value === true || value === '1';
  if (cell.t !== CellValueType.FORCE_STRING && isErrorText(value)) return { error: value, sentence: sentenceOf(cell) };
  return cell.t === CellValueType.NUMBER && typeof value === 'string' ? Number(value) : value;
}
