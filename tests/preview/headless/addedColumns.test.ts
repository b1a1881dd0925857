import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { columnsView } from '../../../src/sheets/columns/columnsView';
import type { FormulaForm } from '../../../src/sheets/columns/formulaForm';
import type { OfferOptions } from '../../../src/sheets/columns/offer';
import { offersFor } from '../../../src/sheets/columns/offers';
import { planColumns } from '../../../src/sheets/columns/planColumns';
import { builtFunctions } from '../builtFunctions';
import { openedFile } from '../openedFile';

const functions = builtFunctions();
const associated = loadScript(functions.script);
let open: HeadlessWorkbook;
let port: UniverWorkbook;

beforeEach(async () => {
  const file = readFileSync(join(__dirname, '../../../samples/catalogue.xlsx'));
  const data = await openedFile(new Uint8Array(file), 'catalogue.xlsx');
  open = headlessWorkbook(data, hostFunctions(functions.metadata, associated));
  port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
});
afterEach(() => open.dispose());

const HEADINGS = [
  'Order',
  'Hose',
  'End 1',
  'End 2',
  'OAL (mm)',
  'Qty',
  'Machine',
  'Dial set',
  'R1 (mm)',
  'R2 (mm)',
  'R3 (mm)',
  'R4 (mm)',
];
const CONE = 'Larch 24° cone S straight DN 12';
const line = (order: number, overall: number | string, machine: string, dial: number, ...readings: number[]) => [
  order,
  'Larch DN 12',
  CONE,
  CONE,
  overall,
  2,
  machine,
  dial,
  ...readings,
];

async function sheetOf(rows: readonly (readonly (string | number)[])[]): Promise<void> {
  const values = [HEADINGS, ...rows];
  const address = `A1:L${values.length}`;
  await port.write([
    { kind: 'addSheet', sheet: 'My jobs' },
    { kind: 'values', at: { sheet: 'My jobs', address }, values: values.map(row => HEADINGS.map((_, i) => row[i] ?? '')) },
  ]);
}

/** Adds columns as the pane does; gives what then stands under their headings. */
async function added(
  ids: readonly string[],
  options: OfferOptions = {},
  form?: FormulaForm,
): Promise<Record<string, CellValue[]>> {
  const view = await columnsView(port, { sheet: 'My jobs', block: blockOf('B2')! });
  if (view.status !== 'ready') throw new Error(view.status);
  // Columns may be added a second time here, to compare them with the first.
  const { columns, catalogue, units } = view;
  const offers = offersFor({ columns, catalogue, units }, { ...options, spill: form === 'column' });
  const picked = ids.map(id => offers.find(offer => offer.id === id)!);
  expect(picked.map(({ reason }) => reason).filter(Boolean)).toEqual([]);
  const { changes, added: written, at } = planColumns(view, picked, { form });
  await port.write(changes);
  await open.calculate();
  const used = (await port.used('My jobs'))!;
  const column = (index: number) => used.values.slice(1).map(row => row[index]!);
  // What one call gives stands together: columns are found by their headings.
  const place = (id: string) => {
    const { heading, unit } = picked.find(offer => offer.id === id)!;
    const named = unit ? `${heading} (${unit})` : heading;
    return at.column + written.columns.findIndex(each => each.heading.replace(/ \d+$/, '') === named);
  };
  return Object.fromEntries(ids.map(id => [id, column(place(id))]));
}

const LOOKED_UP = [
  'cutLength',
  'dieA',
  'dialA',
  'diameterA',
  'toleranceA',
  'insertionA',
  'pressure',
  'assembly',
  'cost',
  'price',
];

test('looked-up columns answer for a catalogue of the workbook, one formula a row', async () => {
  await sheetOf([
    line(1, 1200, 'Machine at the gate', 405),
    line(2, 420, 'Machine in the van', 21),
    line(3, 200, 'Machine in the van', 21),
  ]);
  const columns = await added(LOOKED_UP, { margin: '0.4' });
  const [fittings] = await port.read([{ sheet: 'Fittings', address: 'A1:R200' }]);
  const cutOff = fittings!.values[0]!.indexOf('Cut-off (mm)');
  const cone = fittings!.values.find(row => row[0] === CONE)!;
  expect(columns.cutLength).toEqual([1200, 420, 200].map(overall => overall - 2 * Number(cone[cutOff])));
  // The dials are the machines' own: the newest of those recorded in the sheet Machines.
  expect(columns.dialA).toEqual([405, 21, 21]);
  expect(columns.dieA).toEqual(['D26', 'D26', 'D26']);
  expect(columns.diameterA![0]).toBeCloseTo(27.35, 9);
  expect(columns.pressure).toEqual([275, 275, 275]);
  expect(columns.assembly).toEqual(['OK', 'OK', expect.stringMatching(/^too short/)]);
  // What must not be made has no cost.
  expect(columns.cost![2]).toEqual({ error: '#N/A', sentence: columns.assembly![2] });
  expect(columns.price!.slice(0, 2).map((price, i) => Number(price) * 0.6 - Number(columns.cost![i]))).toEqual([
    expect.closeTo(0, 9),
    expect.closeTo(0, 9),
  ]);
});

test('one formula for all rows gives what a formula in every cell gives, errors and blank rows in their own rows', async () => {
  const rows = [
    line(1, 1200, '', 414),
    line(2, 'long', '', 414),
    [],
    [4, 'Larch DN 12', 'Elm', CONE, 900, 1],
    line(5, 905.5, 'Machine at the gate', 414),
  ];
  await sheetOf(rows);
  const byRow = await added(LOOKED_UP, { margin: '0.4' }, 'cell');
  const spilt = await added(LOOKED_UP, { margin: '0.4' }, 'column');
  expect(spilt).toEqual(byRow);
  expect(byRow.dialA!.slice(2)).toEqual(['', { error: '#N/A', sentence: expect.stringMatching(/do not assemble/) }, 405]);
  expect(byRow.cutLength![1]).toMatchObject({ error: '#VALUE!' });
  expect(byRow.cutLength![2]).toBe('');
});

test('above 500 rows one formula for all rows is written', async () => {
  await sheetOf(Array.from({ length: 2100 }, (_, i) => line(i, 600 + i, '', 414)));
  const { cutLength, dialA } = await added(['cutLength', 'dialA']);
  expect(cutLength).toHaveLength(2100);
  expect(Number(cutLength![2099]) - Number(cutLength![0])).toBe(2099);
  expect(new Set(dialA).size).toBe(1);
});

test('verdict and next dial take target, tolerance, change per digit and limits from the workbook', async () => {
  // The gate machine moves 12 digits at most and a digit changes the diameter by what its row says.
  await sheetOf([
    line(1, 1200, 'Machine at the gate', 414, 27.35, 27.36, 27.34, 27.35),
    line(2, 1200, 'Machine at the gate', 414, 27.5, 27.51, 27.5, 27.49),
    line(3, 1200, 'Machine at the gate', 414, 29, 29, 29, 29),
    line(4, 1200, 'Machine at the gate', 414),
  ]);
  const { check, nextDial } = await added(['check', 'nextDial'], { machine: 'Machine at the gate' });
  const [machines] = await port.read([{ sheet: 'Machines', address: 'A1:L2' }]);
  const step = Number(machines!.values[1]![machines!.values[0]!.indexOf('Step (mm)')]);
  expect(check).toEqual(['IN SPEC', 'LOOSE', 'LOOSE', '']);
  expect(nextDial!.slice(0, 2)).toEqual([414, 414 + Math.round(0.15 / step)]);
  expect(nextDial![2]).toMatchObject({ error: '#VALUE!', sentence: expect.stringMatching(/digits/) });
  expect(nextDial![3]).toBe('');
});
