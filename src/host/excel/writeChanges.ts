import { addressOf, blockOf, sheetInFormula } from '../../workbook/a1';
import { changedMeanwhile, firstUnexpected } from '../../workbook/expectedCells';
import { bytesOf, MOST_BYTES, type RequestCells } from '../../workbook/requestSize';
import { reasonOfRefusal, RefusedWriting } from '../../workbook/refusedWriting';
import type { CellStyle, Change, Expected, RangeAddress } from '../../workbook/workbook';
import { addCharts } from './addCharts';
import { addPictures } from './addPictures';
import { checkChanges, type SheetIds } from './checkChanges';
import { literal } from './literal';
import { run } from './run';
import { setPage } from './setPage';
import { cellsBefore } from './cellsBefore';
import { takeBack, type Before } from './takeBack';

const ALL_EDGES = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight', 'InsideHorizontal', 'InsideVertical'] as const;

/** Lines between cells only where there are several: one row has none between its rows. */
function edgesOf(border: CellStyle['border'], address: string): readonly (typeof ALL_EDGES)[number][] {
  const { rows, columns } = blockOf(address)!;
  const edges = border === 'all' ? ALL_EDGES : border === 'bottom' ? (['EdgeBottom', 'InsideHorizontal'] as const) : [];
  return edges.filter(edge => (edge === 'InsideHorizontal' ? rows > 1 : edge === 'InsideVertical' ? columns > 1 : true));
}

function applyStyle(worksheet: Excel.Worksheet, address: string, style: CellStyle): void {
  const { format } = worksheet.getRange(address);
  if (style.bold !== undefined) format.font.bold = style.bold;
  if (style.color !== undefined) format.font.color = style.color;
  if (style.fill !== undefined) format.fill.color = style.fill;
  if (style.wrap !== undefined) format.wrapText = style.wrap;
  if (style.columnWidth !== undefined) format.columnWidth = style.columnWidth;
  if (style.rowHeight !== undefined) format.rowHeight = style.rowHeight;
  if (style.fontSize !== undefined) format.font.size = style.fontSize;
  for (const edge of edgesOf(style.border, address)) format.borders.getItem(edge).style = 'Continuous';
}

/** What an operation weighs besides its cells: a generous guess at the paths of its objects. */
const OPERATION_BYTES = 600;

/**
 * What waits to be sent: synced before it grows beyond what one request takes (Excel on the web: 5 MB, learn.microsoft.com,
 * office/dev/add-ins/excel/performance, "Payload size limit best practices").
 */
class Request {
  private bytes = 0;

  constructor(
    readonly context: Excel.RequestContext,
    private readonly ids: SheetIds,
  ) {}

  /** A sheet that stood before by its id, which stays when somebody renames it; a new one by its name. */
  sheet(name: string): Excel.Worksheet {
    return this.context.workbook.worksheets.getItem(this.ids.get(name) ?? name);
  }

  async add(cells: RequestCells = []): Promise<void> {
    const more = OPERATION_BYTES + bytesOf(cells);
    if (this.bytes > 0 && this.bytes + more > MOST_BYTES) {
      await this.context.sync();
      this.bytes = 0;
    }
    this.bytes += more;
  }
}

/** Writes cells; where they are more than a request takes, in pieces of whole rows. */
async function writeCells(request: Request, at: RangeAddress, cells: RequestCells, kind: 'values' | 'formulas') {
  const worksheet = request.sheet(at.sheet);
  const block = blockOf(at.address)!;
  const rows = Math.ceil(cells.length / Math.max(1, Math.ceil(bytesOf(cells) / MOST_BYTES)));
  for (let first = 0; first < cells.length; first += rows) {
    const part = cells.slice(first, first + rows);
    await request.add(part);
    const range = worksheet.getRange(addressOf({ ...block, row: block.row + first, rows: part.length }));
    if (kind === 'values') range.values = part.map(row => row.map(literal));
    else range.formulas = part.map(row => [...row]);
  }
}

/** What the names refer to that the workbook has already: they are moved, not added twice. */
async function namesBefore(context: Excel.RequestContext, changes: readonly Change[]): Promise<ReadonlyMap<string, string>> {
  const wanted = changes.flatMap(change => (change.kind === 'name' ? [change.name] : []));
  if (wanted.length === 0) return new Map();
  const items = wanted.map(name => context.workbook.names.getItemOrNullObject(name));
  for (const item of items) item.load('formula');
  await context.sync();
  return new Map(
    wanted.flatMap((name, index) => (items[index]!.isNullObject ? [] : [[name, String(items[index]!.formula)] as const])),
  );
}

/** In its turn among the changes, because the sheet it refers to may have been added by one before it. */
function setName(request: Request, name: string, { sheet, address }: RangeAddress, stands: boolean): void {
  const { names } = request.context.workbook;
  if (!stands) {
    names.add(name, request.sheet(sheet).getRange(address));
    return;
  }
  const fixed = addressOf(blockOf(address)!).replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');
  names.getItem(name).formula = `=${sheetInFormula(sheet)}!${fixed}`;
}

async function apply(request: Request, change: Change, names: Before['names']): Promise<void> {
  if (change.kind === 'values') return writeCells(request, change.at, change.values, 'values');
  if (change.kind === 'formulas') return writeCells(request, change.at, change.formulas, 'formulas');
  await request.add();
  switch (change.kind) {
    case 'addSheet':
      request.context.workbook.worksheets.add(change.sheet);
      return;
    case 'format':
      // A single value is set on every cell of the range; the declared type knows tables only.
      request.sheet(change.at.sheet).getRange(change.at.address).numberFormat = change.numberFormat as unknown as string[][];
      return;
    case 'style':
      return applyStyle(request.sheet(change.at.sheet), change.at.address, change.style);
    case 'page':
      return setPage(request.sheet(change.sheet), change.page);
    case 'name':
      return setName(request, change.name, change.refersTo, names.has(change.name));
    case 'removeSheet':
    case 'chart':
    case 'picture':
      // These come last: see send.
      return;
  }
}

/** What has to be known before anything is written; refuses where a cell changed since the changes were planned. */
async function lookBefore(changes: readonly Change[], expected: Expected | undefined): Promise<Before> {
  const { ids, names } = await run(async context => ({
    ids: await checkChanges(context, changes),
    names: await namesBefore(context, changes),
  }));
  const cells = await cellsBefore(changes, ids);
  const changed = expected && firstUnexpected(changes, expected, cells);
  if (changed) throw new Error(changedMeanwhile(changed));
  return { ids, cells, names };
}

/** Sends the changes; sheets go last, for they cannot be put back. Gives why charts or pictures are missing. */
function send(changes: readonly Change[], { ids, names }: Before): Promise<string> {
  return run(async context => {
    const request = new Request(context, ids);
    for (const change of changes) await apply(request, change, names);
    await context.sync();
    const removed = changes.flatMap(change => (change.kind === 'removeSheet' ? [change.sheet] : []));
    for (const sheet of removed) request.sheet(sheet).delete();
    if (removed.length > 0) await context.sync();
    const pictures = changes.filter(change => change.kind === 'picture');
    const charts = changes.filter(change => change.kind === 'chart');
    return [await addPictures(context, pictures), await addCharts(context, charts)].filter(Boolean).join(' ');
  });
}

/**
 * Writes all changes: looked at first, then in one sync (more where they exceed what one request takes): each sync is an undo step.
 * Charts and pictures come after the cells that they are made of and lie over. Where Excel refuses in the midst, cells get back what they held.
 * @param expected what stood in the cells when the changes were planned: nothing is written where one holds something else now. Source:
 *   learn.microsoft.com, office/dev/add-ins/excel/co-authoring-in-excel-add-ins: what was read grows stale when coauthors write
 * @throws RefusedWriting with what stands in the workbook then: all cells where only charts were refused
 */
export async function writeChanges(changes: readonly Change[], expected?: Expected): Promise<void> {
  if (changes.length === 0) return;
  let before: Before | undefined;
  let missing: string;
  try {
    before = await lookBefore(changes, expected);
    missing = await send(changes, before);
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    throw new RefusedWriting(reasonOfRefusal(error), before ? await takeBack(changes, before) : 'Nothing was written.');
  }
  if (missing) throw new RefusedWriting(missing, 'All cells are written.');
}
