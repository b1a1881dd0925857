import { blockOf, splitReference, cellAddress, addressOf } from '../../workbook/a1';
import type { CellValue, RangeAddress, RangeContent } from '../../workbook/workbook';
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

/** Text such as `'=A1` comes without its mark, as if it were a formula; but only text has itself as its value. */
function formulaOf(formula: unknown, value: unknown): string {
  return typeof formula === 'string' && formula.startsWith('=') && formula !== value ? formula : '';
}

function contentOf(range: Excel.Range): RangeContent {
  const { sheet = '', address } = splitReference(range.address);
  const block = { row: range.rowIndex, column: range.columnIndex };
  const { values, valueTypes, formulas, numberFormat } = range;
  // Since 2407 Excel on the desktop gives null instead of an error for more than five million cells (OfficeDev/office-js issue 4783).
  if (!values || !formulas) throw new ExcelRefusal('RangeExceedsLimit', range.address);
  return {
    sheet,
    address: address.replace(/\$/g, ''),
    ...block,
    values: values.map((row, r) => row.map((value, c) => valueOf(value, valueTypes[r]![c]))),
    formulas: formulas.map((row, r) => row.map((formula, c) => formulaOf(formula, values[r]![c]))),
    formats: numberFormat.map(row => row.map(format => String(format ?? 'General'))),
  };
}

/** The first cell of a range that lies wholly outside the used part of its sheet. */
function blankCell(whole: Excel.Range): RangeContent {
  const { sheet = '' } = splitReference(whole.address);
  const { rowIndex: row, columnIndex: column } = whole;
  const address = cellAddress({ row, column });
  return { sheet, address, row, column, values: [['']], formulas: [['']], formats: [['General']] };
}

const answerOf = ({ whole, used }: Asked): RangeContent => (used.isNullObject ? blankCell(whole) : contentOf(used));

/** Cells in one answer where all at once are too many; with formulas and formats each is some dozens of bytes. */
const CELLS_A_PIECE = 20_000;
/** More than 5 MB on the web; more than five million cells anywhere. */
const TOO_LARGE = new Set(['ResponsePayloadSizeLimitExceeded', 'RangeExceedsLimit']);

/** Content of one range that is too large for one answer: whole rows a sync. */
async function contentInPieces(
  context: Excel.RequestContext,
  whole: Excel.Range,
  worksheet: Excel.Worksheet,
): Promise<RangeContent> {
  const used = whole.getIntersectionOrNullObject(worksheet.getUsedRange(true));
  whole.load('address,rowIndex,columnIndex');
  used.load('rowIndex,columnIndex,rowCount,columnCount');
  await context.sync();
  if (used.isNullObject) return blankCell(whole);
  const block = { row: used.rowIndex, column: used.columnIndex, rows: used.rowCount, columns: used.columnCount };
  const rows = Math.max(1, Math.floor(CELLS_A_PIECE / block.columns));
  const pieces: RangeContent[] = [];
  for (let first = 0; first < block.rows; first += rows) {
    const piece = { ...block, row: block.row + first, rows: Math.min(rows, block.rows - first) };
    const range = worksheet.getRange(addressOf(piece));
    range.load(CONTENT);
    await context.sync();
    pieces.push(contentOf(range));
  }
  return {
    ...pieces[0]!,
    address: addressOf(block),
    values: pieces.flatMap(({ values }) => values),
    formulas: pieces.flatMap(({ formulas }) => formulas),
    formats: pieces.flatMap(({ formats }) => formats),
  };
}

/** Reads ranges at once; where the answer would be larger than Excel on the web gives, one after the other in pieces. */
export async function readRangesOrPieces(ranges: readonly RangeAddress[]): Promise<readonly RangeContent[]> {
  try {
    return await run(context => readRanges(context, ranges));
  } catch (error) {
    if (!(error instanceof ExcelRefusal) || !TOO_LARGE.has(error.code)) throw error;
  }
  const contents: RangeContent[] = [];
  for (const { sheet, address } of ranges) {
    contents.push(
      await run(context => {
        const worksheet = context.workbook.worksheets.getItem(sheet);
        return contentInPieces(context, worksheet.getRange(address), worksheet);
      }),
    );
  }
  return contents;
}

/** The used part of a sheet, in pieces where it is too large for one answer; undefined where it is empty. */
export async function readUsedOrPieces(sheet: string): Promise<RangeContent | undefined> {
  try {
    return await run(context => readUsed(context, sheet));
  } catch (error) {
    if (!(error instanceof ExcelRefusal) || !TOO_LARGE.has(error.code)) throw error;
  }
  return run(context => {
    const worksheet = context.workbook.worksheets.getItem(sheet);
    return contentInPieces(context, worksheet.getUsedRange(true), worksheet);
  });
}

/** Content of several ranges, each clipped to the used part of its sheet, in one sync. */
async function readRanges(context: Excel.RequestContext, ranges: readonly RangeAddress[]): Promise<RangeContent[]> {
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

const SEVERAL_AREAS = new Set(['InvalidSelection', 'InvalidReference', 'InvalidArgument', ...TOO_LARGE]);

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
async function readUsed(context: Excel.RequestContext, sheet: string): Promise<RangeContent | undefined> {
  const used = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(true);
  used.load(CONTENT);
  await context.sync();
  return used.isNullObject ? undefined : contentOf(used);
}
