import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import '@univerjs/sheets-sort/facade';
import { IUniverInstanceService } from '@univerjs/core';
import { UniverSheetsFilterPlugin } from '@univerjs/sheets-filter';
import '@univerjs/sheets-filter/facade';
import { SheetsSortService, UniverSheetsSortPlugin } from '@univerjs/sheets-sort';
import { addressOf, blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { bundlesOf, type BundleId } from '../../../src/sheets/columns/bundles';
import { columnsView } from '../../../src/sheets/columns/columnsView';
import type { FormulaForm } from '../../../src/sheets/columns/formulaForm';
import { missingFormulas } from '../../../src/sheets/columns/missingFormulas';
import { offersFor } from '../../../src/sheets/columns/offers';
import { planColumns } from '../../../src/sheets/columns/planColumns';
import { builtFunctions } from '../builtFunctions';

const FORMS: readonly FormulaForm[] = ['cell', 'row', 'column'];
const SHEET = 'Our lines';
const MACHINE = 'Machine at the gate';
const functions = builtFunctions();
let open: HeadlessWorkbook;
let port: UniverWorkbook;
/** Calls of our functions by the engine. */
let calls = 0;

beforeEach(async () => {
  const file = readFileSync(join(__dirname, '../../../samples/catalogue.xlsx'));
  const { data } = await readXlsx(new Uint8Array(file), 'catalogue.xlsx');
  const counted = [...loadScript(functions.script)].map(
    ([id, run]) =>
      [
        id,
        (...args: Parameters<typeof run>) => {
          calls += 1;
          return run(...args);
        },
      ] as const,
  );
  open = headlessWorkbook(data, hostFunctions(functions.metadata, new Map(counted)));
  open.univer.registerPlugin(UniverSheetsSortPlugin);
  open.univer.registerPlugin(UniverSheetsFilterPlugin);
  // Undo works on the workbook that has the focus; on the page a click gives it.
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
});
afterEach(() => open.dispose());

const HEADINGS = [
  ...['Order', 'Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Qty', 'Temperature (°C)', 'Dial set'],
  ...['R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
];
const CONE = 'Larch 24° cone S straight DN 12';
const READINGS = [27.35, 27.36, 27.34, 27.35];
type Row = readonly (string | number)[];
const line = (order: number, overall: number | string, ...rest: Row): Row => [
  ...[order, 'Larch DN 12', CONE, CONE, overall, 2],
  ...(rest.length > 0 ? rest : ['', 403, ...READINGS]),
];
/** A line that cannot be made, one with a length in words, a blank row, one on which nothing is measured. */
const ROWS: readonly Row[] = [
  line(1, 1200),
  line(2, 'long'),
  [],
  [4, 'Larch DN 12', 'Elm', CONE, 900, 1, '', 403, ...READINGS],
  line(5, 905.5, 60, 403, 27.5, 27.51, 27.5, 27.49),
  line(6, 200, '', 403, '', '', '', ''),
];

async function put(rows: readonly Row[], from = 1): Promise<void> {
  const values = [...(from === 1 ? [HEADINGS] : []), ...rows].map(row => HEADINGS.map((_, i) => row[i] ?? ''));
  const address = addressOf({ row: from - 1, column: 0, rows: values.length, columns: HEADINGS.length });
  const sheets = await port.sheets();
  await port.write([
    ...(sheets.includes(SHEET) ? [] : [{ kind: 'addSheet', sheet: SHEET } as const]),
    { kind: 'values', at: { sheet: SHEET, address }, values },
  ]);
}

async function view() {
  const found = await columnsView(port, { sheet: SHEET, block: blockOf('B2')! });
  if (found.status !== 'ready') throw new Error(found.status);
  return found;
}

/** Adds a bundle as the pane does; gives what stands under each heading, and the calls that it took. */
async function add(id: BundleId, form: FormulaForm) {
  const before = await view();
  const offers = offersFor(before, { margin: '0.4', machine: MACHINE, spill: form === 'column' });
  const plan = planColumns(before, bundlesOf(offers).find(bundle => bundle.id === id)!.offers, { form });
  await port.write(plan.changes);
  await open.calculate();
  return { plan, columns: await standing() };
}

/** Calls of our functions while the whole workbook is calculated once. */
async function callsOfAll(): Promise<number> {
  calls = 0;
  await open.calculate();
  return calls;
}

async function standing(): Promise<Record<string, CellValue[]>> {
  const { values } = (await port.used(SHEET))!;
  return Object.fromEntries(values[0]!.map((heading, at) => [String(heading), values.slice(1).map(row => row[at]!)]));
}

const withoutSentences = (columns: Record<string, CellValue[]>) =>
  Object.fromEntries(
    Object.entries(columns).map(([name, cells]) => [name, cells.map(cell => (typeof cell === 'object' ? cell.error : cell))]),
  );

const BUNDLES: readonly BundleId[] = ['bench', 'price', 'qa'];

test.each(BUNDLES)(
  'the columns of the bundle %s answer alike in each form, errors and blank rows in their own rows',
  async id => {
    const found: Record<string, CellValue[]>[] = [];
    for (const form of FORMS) {
      await put(ROWS);
      const { columns } = await add(id, form);
      found.push(withoutSentences(columns));
      await port.write([{ kind: 'removeSheet', sheet: SHEET }]);
    }
    expect(found[1]).toEqual(found[0]);
    expect(found[2]).toEqual(found[0]);
    expect(Object.keys(found[0]!).length).toBeGreaterThan(HEADINGS.length + 3);
  },
);

// Counted by hand from the formulas: bench: ASSEMBLY twice and CRIMPSETUP four times an end; price: ASSEMBLY twice, UNITCOST, SELLPRICE; QA: CRIMPSETUP
// twice, CRIMPCHECK, CRIMPDETAIL, NEXTDIAL. Together: ASSEMBLY and CRIMPSETUP once an end; ASSEMBLY, UNITCOST, SELLPRICE; CRIMPSETUP, CRIMPDETAIL, NEXTDIAL.
test.each([
  ['bench', 10, 3],
  ['price', 4, 3],
  ['qa', 5, 3],
] as const)(
  'the bundle %s costs %i calls a row in cells, %i a row or in all where one formula fills several',
  async (id, cell, few) => {
    const rows = Array.from({ length: 8 }, (_, i) => line(i + 1, 900 + i));
    const counted: [number, number][] = [];
    for (const form of FORMS) {
      await put(rows);
      const before = await callsOfAll();
      const { plan } = await add(id, form);
      counted.push([plan.calls, (await callsOfAll()) - before]);
      await port.write([{ kind: 'removeSheet', sheet: SHEET }]);
    }
    expect(counted).toEqual([
      [cell * 8, cell * 8],
      [few * 8, few * 8],
      [few, few],
    ]);
  },
);

test.each(FORMS)('number formats stand on every column in the form %s', async form => {
  await put(ROWS);
  const { plan } = await add('bench', form);
  const { formats, values } = (await port.used(SHEET))!;
  const of = Object.fromEntries(values[0]!.map((heading, at) => [heading, formats.slice(1).map(row => row[at])]));
  expect(new Set(of['Cut length (mm)'])).toEqual(new Set(['0']));
  expect(new Set(of['Crimp diameter B (mm)'])).toEqual(new Set(['0.00']));
  expect(new Set(of['Insertion depth A (mm)'])).toEqual(new Set(['0.0']));
  expect(plan.at.columns).toBe(10);
});

test.each(FORMS)('one undo takes away all that was added in the form %s, and what its formulas fill', async form => {
  await put(ROWS);
  const before = await port.used(SHEET);
  await add('bench', form);
  await open.api.undo();
  await open.calculate();
  expect(await port.used(SHEET)).toEqual(before);
  expect(await port.spillParent({ sheet: SHEET, address: 'N2' })).toBeUndefined();
});

test.each(FORMS)(
  'columns in the form %s are known again: nothing is offered twice, and the QA columns take theirs',
  async form => {
    await put(ROWS);
    await add('bench', form);
    const again = await view();
    const [bench, price, qa] = bundlesOf(offersFor(again, { margin: '0.4', machine: MACHINE }));
    expect(bench!.offers).toEqual([]);
    expect(bench!.present).toHaveLength(10);
    expect(price!.offers).toHaveLength(4);
    // The crimp diameter of the bench is the target now; the tolerance is still looked up.
    expect(qa!.offers.map(({ heading }) => heading)).toEqual(['Tolerance A', 'Verdict', 'Deviation', 'Next dial']);
    expect(missingFormulas(again).rows).toEqual([]);
  },
);

test.each(FORMS)('rows appended below get what they lack in the form %s', async form => {
  await put(ROWS);
  await add('bench', form);
  const more = [line(7, 1500), line(8, 1600)];
  await put(more, ROWS.length + 2);
  const lacking = missingFormulas(await view());
  expect(lacking.rows).toEqual([ROWS.length + 2, ROWS.length + 3]);
  expect(lacking.headings).toHaveLength(10);
  await port.write(lacking.changes);
  await open.calculate();
  const appended = await standing();
  const formats = (await port.used(SHEET))!.formats;
  await port.write([{ kind: 'removeSheet', sheet: SHEET }]);
  await put([...ROWS, ...more]);
  const { columns } = await add('bench', 'cell');
  expect(withoutSentences(appended)).toEqual(withoutSentences(columns));
  expect(formats).toEqual((await port.used(SHEET))!.formats);
  expect(missingFormulas(await view()).rows).toEqual([]);
});

test('where somebody typed beside an appended row, each other cell of the row gets a formula of its own', async () => {
  await put([line(1, 1200)]);
  const { plan } = await add('bench', 'row');
  await put([line(2, 900)], 3);
  const check = addressOf({ row: 2, column: plan.at.column + 1, rows: 1, columns: 1 });
  await port.write([{ kind: 'values', at: { sheet: SHEET, address: check }, values: [['seen']] }]);
  await port.write(missingFormulas(await view()).changes);
  await open.calculate();
  const columns = await standing();
  expect(columns['Assembly check']).toEqual(['OK', 'seen']);
  expect(Number(columns['Cut length (mm)']![0]) - Number(columns['Cut length (mm)']![1])).toBe(300);
  expect(missingFormulas(await view()).rows).toEqual([]);
});

test.each(FORMS)('typed columns that are sorted by themselves take their answers along in the form %s', async form => {
  await put([line(3, 700), line(1, 1200), line(2, 900)]);
  const { plan } = await add('bench', form);
  const byOrder = async () => {
    const { Order: order, 'Cut length (mm)': cut, 'Die A': die } = await standing();
    return Object.fromEntries(order!.map((each, i) => [String(each), [cut![i], die![i]]]));
  };
  const before = await byOrder();
  const sheet = open.api.getActiveWorkbook()!.getSheetByName(SHEET)!;
  sheet.getRange('A2:L4').sort({ column: 0, ascending: true });
  await open.calculate();
  expect((await standing()).Order).toEqual([1, 2, 3]);
  expect(await byOrder()).toEqual(before);
  // The menu of the page refuses to sort a range that a formula fills from elsewhere.
  const range = { startRow: 1, endRow: 3, startColumn: 0, endColumn: plan.at.column + plan.at.columns - 1 };
  const [unitId, subUnitId] = [open.api.getActiveWorkbook()!.getId(), sheet.getSheetId()];
  const sorting = open.univer.__getInjector().get(SheetsSortService);
  expect(sorting.formulaCheck({ unitId, subUnitId, range, colIndex: 0 } as never)).toBe(form === 'cell');
});

test.each(FORMS)('a filter by an added column shows the lines that answer so in the form %s', async form => {
  await put([line(1, 1200), line(2, 200), line(3, 900)]);
  const { plan } = await add('bench', form);
  const sheet = open.api.getActiveWorkbook()!.getSheetByName(SHEET)!;
  const filter = sheet.getRange(`A1:V4`).createFilter()!;
  const colId = plan.at.column + plan.added.columns.findIndex(({ heading }) => heading === 'Assembly check');
  filter.setColumnFilterCriteria(colId, { colId, filters: { filters: ['OK'] } });
  expect([...(await port.layout(SHEET)).hiddenRows]).toEqual([2]);
  await open.calculate();
  expect((await standing())['Assembly check']).toEqual(['OK', expect.stringMatching(/^too short/), 'OK']);
});

test('something typed into cells that a formula fills stops it, and takes nothing else along', async () => {
  await put([line(1, 1200), line(2, 900)]);
  const { plan } = await add('bench', 'row');
  const check = addressOf({ row: 1, column: plan.at.column + 1, rows: 1, columns: 1 });
  await port.write([{ kind: 'values', at: { sheet: SHEET, address: check }, values: [['seen']] }]);
  await open.calculate();
  const columns = withoutSentences(await standing());
  expect(columns['Cut length (mm)']).toEqual(['#SPILL!', 845]);
  expect(columns['Assembly check']).toEqual(['seen', 'OK']);
  expect(columns['Die A']).toEqual(['D26', 'D26']);
});
