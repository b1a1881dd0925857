import { addressOf, blockOf, sheetInFormula } from '../../workbook/a1';
import { bytesOf, MOST_BYTES, type Cells } from '../../workbook/requestSize';
import { reasonOfRefusal, RefusedWriting } from '../../workbook/refusedWriting';
import type { CellStyle, Change, RangeAddress } from '../../workbook/workbook';
import { addCharts } from './addCharts';
import { addPictures } from './addPictures';
import { ExcelRefusal, run } from './run';
import { setPage } from './setPage';
import { takeBackAdded } from './takeBackAdded';

/** Text stays text: Excel would read `=1+1` as a formula and `3/8` as a date. Plain words need no mark. */
function literal(value: string | number | boolean): string | number | boolean {
  if (typeof value !== 'string' || value === '') return value;
  const words = /^\p{L}[\p{L} ,.;:()°-]*$/u.test(value) && !/^(?:true|false)$/i.test(value);
  return words ? value : `'${value}`;
}

function shapeMistake(change: Change): string | undefined {
  if (change.kind !== 'values' && change.kind !== 'formulas') return undefined;
  const cells: Cells = change.kind === 'values' ? change.values : change.formulas;
  const block = blockOf(change.at.address);
  const fits = block && cells.length === block.rows && cells.every(row => row.length === block.columns);
  return fits ? undefined : `${change.at.sheet}!${change.at.address} does not have the shape of what goes into it`;
}

/** Refuses before anything is written: wrong shapes, sheets missing or there already, protected sheets and workbooks. */
async function check(context: Excel.RequestContext, changes: readonly Change[]): Promise<void> {
  const mistake = changes.map(shapeMistake).find(Boolean);
  if (mistake) throw new Error(mistake);
  const added = changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));
  const touched = changes.flatMap(change =>
    'at' in change ? [change.at.sheet] : 'refersTo' in change ? [change.refersTo.sheet] : [change.sheet],
  );
  const names = [...new Set([...added, ...touched])];
  const sheets = names.map(name => context.workbook.worksheets.getItemOrNullObject(name));
  for (const sheet of sheets) sheet.load('name,protection/protected');
  const { protection } = context.workbook;
  protection.load('protected');
  await context.sync();
  if (protection.protected && changes.some(({ kind }) => kind === 'addSheet' || kind === 'removeSheet')) {
    throw new Error(
      'The workbook is protected, so that sheets cannot be added: lift it (Review, Protect Workbook), then try again.',
    );
  }
  names.forEach((name, index) => {
    const sheet = sheets[index]!;
    const isNew = added.includes(name);
    if (isNew && !sheet.isNullObject) throw new Error(`There is already a sheet "${name}".`);
    if (!isNew && sheet.isNullObject) throw new ExcelRefusal('ItemNotFound', name);
    if (!sheet.isNullObject && sheet.protection.protected) {
      throw new Error(`Sheet "${name}" is protected: lift the protection (Review, Unprotect Sheet), then try again.`);
    }
  });
}

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

/** What waits to be sent: synced before it grows beyond what one request takes. */
class Request {
  private bytes = 0;

  constructor(readonly context: Excel.RequestContext) {}

  async add(cells: Cells): Promise<void> {
    const more = bytesOf(cells);
    if (this.bytes > 0 && this.bytes + more > MOST_BYTES) {
      await this.context.sync();
      this.bytes = 0;
    }
    this.bytes += more;
  }
}

/** Writes cells; where they are more than a request takes, in pieces of whole rows. */
async function writeCells(request: Request, at: RangeAddress, cells: Cells, kind: 'values' | 'formulas') {
  const worksheet = request.context.workbook.worksheets.getItem(at.sheet);
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

/** Names of the changes that the workbook has already: they are moved, not added twice. */
async function standingNames(context: Excel.RequestContext, changes: readonly Change[]): Promise<ReadonlySet<string>> {
  const wanted = changes.flatMap(change => (change.kind === 'name' ? [change.name] : []));
  if (wanted.length === 0) return new Set();
  const items = wanted.map(name => context.workbook.names.getItemOrNullObject(name));
  for (const item of items) item.load('name');
  await context.sync();
  return new Set(wanted.filter((_, index) => !items[index]!.isNullObject));
}

/** In its turn among the changes, because the sheet it refers to may have been added by one before it. */
function setName({ workbook }: Excel.RequestContext, name: string, { sheet, address }: RangeAddress, stands: boolean): void {
  if (!stands) {
    workbook.names.add(name, workbook.worksheets.getItem(sheet).getRange(address));
    return;
  }
  const fixed = addressOf(blockOf(address)!).replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');
  workbook.names.getItem(name).formula = `=${sheetInFormula(sheet)}!${fixed}`;
}

async function apply(request: Request, change: Change, standing: ReadonlySet<string>): Promise<void> {
  const { context } = request;
  const { worksheets } = context.workbook;
  switch (change.kind) {
    case 'addSheet':
      worksheets.add(change.sheet);
      return;
    case 'removeSheet':
      worksheets.getItem(change.sheet).delete();
      return;
    case 'values':
      return writeCells(request, change.at, change.values, 'values');
    case 'formulas':
      return writeCells(request, change.at, change.formulas, 'formulas');
    case 'format':
      // A single value is set on every cell of the range; the declared type knows tables only.
      worksheets.getItem(change.at.sheet).getRange(change.at.address).numberFormat = change.numberFormat as unknown as string[][];
      return;
    case 'style':
      return applyStyle(worksheets.getItem(change.at.sheet), change.at.address, change.style);
    case 'chart':
    case 'picture':
      // These come last: see writeChanges.
      return;
    case 'page':
      return setPage(worksheets.getItem(change.sheet), change.page);
    case 'name':
      return setName(context, change.name, change.refersTo, standing.has(change.name));
  }
}

/** What a refusal means for the workbook: nothing where it came before the writing began. */
async function refused(error: unknown, changes: readonly Change[], standing: ReadonlySet<string> | undefined): Promise<unknown> {
  if (!(error instanceof Error)) return error;
  const reason = reasonOfRefusal(error);
  if (!standing) return new RefusedWriting(reason, 'Nothing was written.');
  const names = changes.flatMap(change => (change.kind === 'name' && !standing.has(change.name) ? [change.name] : []));
  return new RefusedWriting(reason, await takeBackAdded(changes, new Set(names)));
}

/**
 * Writes all changes: checked first, then in one sync (more where they exceed what one request takes): each sync is an undo step.
 * Charts and pictures come after the cells that they are made of and lie over.
 * @throws RefusedWriting with what stands in the workbook then: all cells where only charts were refused
 */
export async function writeChanges(changes: readonly Change[]): Promise<void> {
  if (changes.length === 0) return;
  let standing: ReadonlySet<string> | undefined;
  let missing: string | undefined;
  try {
    await run(async context => {
      await check(context, changes);
      standing = await standingNames(context, changes);
      const request = new Request(context);
      for (const change of changes) await apply(request, change, standing);
      await context.sync();
      const pictures = changes.filter(change => change.kind === 'picture');
      const charts = changes.filter(change => change.kind === 'chart');
      missing = [await addPictures(context, pictures), await addCharts(context, charts)].filter(Boolean).join(' ');
    });
  } catch (error) {
    throw await refused(error, changes, standing);
  }
  if (missing) throw new RefusedWriting(missing, 'All cells are written.');
}
