import type { Cells } from '../../cells/singles';
import { callsCatalogue, catalogueReferences, type TableReference } from '../../workbook/catalogueFormula';
import type { CatalogueSource, PausableClock } from '../../workbook/catalogueSource';

type Batch<T> = (context: Excel.RequestContext) => Promise<T>;
interface Call {
  readonly sheet: string;
  readonly formula: string;
}

/** Cells in one request: Excel on the web passes at most 5 MB. */
const CELLS_A_REQUEST = 20_000;
const EDITING = 'InvalidOperationInCellEditMode';

/** Runs a batch; while the user edits a cell it waits, with the clock standing still. */
async function run<T>(batch: Batch<T>, clock: PausableClock): Promise<T> {
  for (;;) {
    try {
      return await Excel.run(batch);
    } catch (error) {
      if ((error as { code?: string }).code !== EDITING) throw error;
    }
    clock.pause();
    try {
      await Excel.run({ delayForCellEdit: true }, context => context.sync());
    } finally {
      clock.resume();
    }
  }
}

/** The range of a name, in two steps: nothing is asked of a name that is not there. */
async function rangeNamed(context: Excel.RequestContext, name: string): Promise<Excel.Range | undefined> {
  const item = context.workbook.names.getItemOrNullObject(name);
  item.load('isNullObject');
  await context.sync();
  if (item.isNullObject) return undefined;
  const range = item.getRangeOrNullObject();
  range.load('isNullObject');
  await context.sync();
  return range.isNullObject ? undefined : range;
}

/** The formula of the cell that is named Catalogue. */
const namedCall: Batch<Call | undefined> = async context => {
  const cell = await rangeNamed(context, 'Catalogue');
  if (!cell) return undefined;
  const first = cell.getCell(0, 0);
  first.load('formulas');
  first.worksheet.load('name');
  await context.sync();
  const formula: unknown = first.formulas[0]?.[0];
  return callsCatalogue(formula) ? { sheet: first.worksheet.name, formula } : undefined;
};

/** All cells of the workbook with a CATALOGUE formula; reads formula cells only, in pieces. */
const allCalls: Batch<Call[]> = async context => {
  const sheets = context.workbook.worksheets;
  sheets.load('items/name');
  await context.sync();
  const formulas = sheets.items.map(sheet => ({
    sheet: sheet.name,
    // Of the used part: through all cells of a sheet, Excel on the desktop looks very long (OfficeDev/office-js issue 4245).
    cells: sheet.getUsedRange().getSpecialCellsOrNullObject(Excel.SpecialCellType.formulas),
  }));
  for (const { cells } of formulas) cells.load('isNullObject,areas/items/rowCount,areas/items/columnCount');
  await context.sync();
  const areas = formulas.flatMap(({ sheet, cells }) =>
    cells.isNullObject ? [] : cells.areas.items.map(area => ({ sheet, area })),
  );
  const calls: Call[] = [];
  for (const { sheet, area } of areas) {
    for (const rows of await valuesInPieces(context, area, 'formulas')) {
      for (const formula of rows.formulas.flat() as unknown[]) if (callsCatalogue(formula)) calls.push({ sheet, formula });
    }
  }
  return calls;
};

/** A range (its size loaded) in pieces that one request can carry, with the property loaded. */
async function valuesInPieces(context: Excel.RequestContext, range: Excel.Range, properties: string): Promise<Excel.Range[]> {
  const rowsAPiece = Math.max(1, Math.floor(CELLS_A_REQUEST / range.columnCount));
  const pieces: Excel.Range[] = [];
  for (let row = 0; row < range.rowCount; row += rowsAPiece) {
    const height = Math.min(rowsAPiece, range.rowCount - row);
    const piece = range.getRow(row).getResizedRange(height - 1, 0);
    piece.load(properties);
    await context.sync();
    pieces.push(piece);
  }
  return pieces;
}

/** The range of a reference; undefined where there is none. */
async function rangeOf(context: Excel.RequestContext, reference: TableReference): Promise<Excel.Range | undefined> {
  const { workbook } = context;
  if (reference.kind === 'range') {
    const sheet = workbook.worksheets.getItemOrNullObject(reference.sheet);
    sheet.load('isNullObject');
    await context.sync();
    return sheet.isNullObject ? undefined : sheet.getRange(reference.address);
  }
  const named = reference.kind === 'name' ? await rangeNamed(context, reference.name) : undefined;
  if (named) return named;
  const table = workbook.tables.getItemOrNullObject(reference.name);
  table.load('isNullObject');
  await context.sync();
  if (table.isNullObject) return undefined;
  return reference.kind === 'table' && reference.part === 'all' ? table.getRange() : table.getDataBodyRange();
}

/** Error values arrive as their text; they are told apart by the type of the cell. */
function cellsOf({ values, valueTypes }: Excel.Range): unknown[][] {
  return values.map((row: unknown[], r: number) =>
    row.map((value, c) =>
      valueTypes[r]?.[c] === Excel.RangeValueType.error ? { type: 'Error', basicType: 'Error', basicValue: value } : value,
    ),
  );
}

/** Content of a table, clipped to its used part, blank rows above it kept. */
async function readTable(context: Excel.RequestContext, reference: TableReference): Promise<unknown[][] | undefined> {
  const range = await rangeOf(context, reference);
  if (!range) return undefined;
  const used = range.getUsedRangeOrNullObject(true);
  range.load('rowIndex');
  used.load('isNullObject,rowIndex,rowCount,columnCount');
  await context.sync();
  if (used.isNullObject) return [[null]];
  const above = Array.from({ length: used.rowIndex - range.rowIndex }, () => [null]);
  const pieces = await valuesInPieces(context, used, 'values,valueTypes');
  return [...above, ...pieces.flatMap(cellsOf)];
}

const tablesOf =
  ({ sheet, formula }: Call): Batch<readonly Cells[] | undefined> =>
  async context => {
    const tables: Cells[] = [];
    const references = catalogueReferences(formula, sheet);
    if (!references) return undefined;
    for (const reference of references) {
      const cells = reference ? await readTable(context, reference) : null;
      if (cells === undefined) return undefined;
      tables.push(cells);
    }
    return tables;
  };

/** Reads the tables of the workbook's CATALOGUE formulas through Office.js: the named cell's first, the others only when needed. */
export const excelCatalogueSource: CatalogueSource = {
  async *calls(clock) {
    const named = await run(namedCall, clock);
    const tables = named && (await run(tablesOf(named), clock));
    if (tables) yield tables;
    for (const call of await run(allCalls, clock)) {
      if (call.sheet === named?.sheet && call.formula === named.formula) continue;
      const others = await run(tablesOf(call), clock);
      if (others) yield others;
    }
  },
};
