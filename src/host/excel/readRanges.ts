import { addressOf, blockOf, splitReference } from '../a1';
import type { CellValue, RangeAddress, RangeContent } from '../workbook';
import { ExcelRefusal, run } from './run';

const CONTENT = 'address,rowIndex,columnIndex,values,valueTypes,formulas,numberFormat';

/** A range asked for, and the part of it that lies in the used part of the sheet. One sync fills both. */
interface Asked {
  readonly whole: Excel.Range;
  readonly used: Excel.Range;
}

function ask(whole: Excel.Range, worksheet: Excel.Worksheet): Asked {
  // getUsedRange gives the first cell of an empty sheet, so it is never a null object.
  const used = whole.getIntersectionOrNullObject(worksheet.getUsedRange(true));
  whole.load('address,rowIndex,columnIndex');
  used.load(CONTENT);
  return { whole, used };
}

function valueOf(value: unknown, type: unknown): CellValue {
  if (type === 'Error') return { error: String(value) };
  return typeof value === 'number' || typeof value === 'boolean' || typeof value === 'string' ? value : '';
}

function contentOf(range: Excel.Range): RangeContent {
  const { sheet = '', address } = splitReference(range.address);
  const block = { row: range.rowIndex, column: range.columnIndex };
  const { values, valueTypes, formulas, numberFormat } = range;
  return {
    sheet,
    address: address.replace(/\$/g, ''),
    ...block,
    values: values.map((row, r) => row.map((value, c) => valueOf(value, valueTypes[r]![c]))),
    formulas: formulas.map(row => row.map(formula => (typeof formula === 'string' && formula.startsWith('=') ? formula : ''))),
    formats: numberFormat.map(row => row.map(format => String(format ?? 'General'))),
  };
}

/** The first cell of a range that lies wholly outside the used part of its sheet. */
function blankCell(whole: Excel.Range): RangeContent {
  const { sheet = '' } = splitReference(whole.address);
  const { rowIndex: row, columnIndex: column } = whole;
  const address = addressOf({ row, column, rows: 1, columns: 1 });
  return { sheet, address, row, column, values: [['']], formulas: [['']], formats: [['General']] };
}

const answerOf = ({ whole, used }: Asked): RangeContent => (used.isNullObject ? blankCell(whole) : contentOf(used));

/** Content of several ranges, each clipped to the used part of its sheet, in one sync. */
export async function readRanges(context: Excel.RequestContext, ranges: readonly RangeAddress[]): Promise<RangeContent[]> {
  const asked = ranges.map(({ sheet, address }) => {
    if (!blockOf(address)) throw new ExcelRefusal('InvalidReference', address);
    const worksheet = context.workbook.worksheets.getItem(sheet);
    return ask(worksheet.getRange(address), worksheet);
  });
  await context.sync();
  return asked.map(answerOf);
}

async function readSelected(context: Excel.RequestContext, range: Excel.Range): Promise<RangeContent> {
  const asked = ask(range, range.worksheet);
  await context.sync();
  return answerOf(asked);
}

const SEVERAL_AREAS = new Set(['InvalidSelection', 'InvalidReference', 'InvalidArgument', 'ResponsePayloadSizeLimitExceeded']);

/** The selected range in one sync; the active cell where several areas, or more than Excel hands over at once, are selected. */
export async function readSelection(): Promise<RangeContent> {
  try {
    return await run(context => readSelected(context, context.workbook.getSelectedRange()));
  } catch (error) {
    if (!(error instanceof ExcelRefusal) || !SEVERAL_AREAS.has(error.code)) throw error;
    return run(context => readSelected(context, context.workbook.getActiveCell()));
  }
}

/** The used part of a sheet in one sync; undefined where it is empty. */
export async function readUsed(context: Excel.RequestContext, sheet: string): Promise<RangeContent | undefined> {
  const used = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(true);
  used.load(CONTENT);
  await context.sync();
  return used.isNullObject ? undefined : contentOf(used);
}
