import type { RawTables } from '../../../src/core/catalogue/readCatalogue';
import { catalogueTables, TABLE_NAMES } from '../../../src/core/catalogue/tables/catalogueTables';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { declineOffice, NO_OFFICE_MEMORY, officeMemory, rememberTaken } from '../../../src/sheets/parts/officeMemory';
import { officeOffer, type OfficeFacts } from '../../../src/sheets/parts/officeOffer';
import { tablesFromFiles } from '../../../src/sheets/parts/tablesFromFiles';
import type { FileSheet } from '../../../src/core/catalogue/partsFile';
import { treeTables, withCell, withRows } from '../../core/catalogue/treeCatalogue';
import { LiveWorkbook } from './liveWorkbook';
import { FORMULA, standingWorkbook } from './standingWorkbook';

/** An office's file with these tables, each on the sheet of its name. */
function officeTables(tables: RawTables, ...more: [string, FileSheet][]) {
  const sheets = new Map<string, FileSheet>([
    ...TABLE_NAMES.flatMap((name): [string, FileSheet][] => {
      const table = tables[name];
      return table ? [[catalogueTables[name].sheet, { table }]] : [];
    }),
    ...more,
  ]);
  const picked = { name: 'catalogue/current.xlsx', bytes: async () => new Uint8Array() };
  return tablesFromFiles(async () => sheets, [picked], 0, {});
}

/** The tree catalogue with all columns of Machines. */
function ownWorkbook(): LiveWorkbook {
  const workbook = standingWorkbook();
  workbook.cells.get('Jobs')!.get('0,2')!.formula = FORMULA.replace('Machines!A1:J6', 'Machines!A1:K6');
  return workbook;
}

async function offered(tables: RawTables, workbook = ownWorkbook(), part: Partial<OfficeFacts> = {}) {
  const standing = await workbookCatalogue(workbook);
  const file = await officeTables(tables);
  return officeOffer({ file, standing, memory: NO_OFFICE_MEMORY, maps: new Map(), known: new Set(), ...part });
}

const handleOf = async (workbook: LiveWorkbook) => (await workbookCatalogue(workbook))!.catalogue!.handle;
/** A dearer hose, two dearer couplings, one crimp row. */
const dearer: RawTables = {
  ...withCell('hoses', 1, 'Price per length (per m)', 9),
  fittings: withCell('fittings', 1, 'Price', 4.5).fittings!.map((row, r) => (r === 2 ? [...row.slice(0, -1), 10] : row)),
  crimps: withCell('crimps', 1, 'Dial', 311).crimps!,
};

test('the same parts data are nothing to offer, wherever they came from', async () => {
  const workbook = ownWorkbook();
  const offer = await offered(treeTables, workbook);
  expect(offer).toMatchObject({ kind: 'same', summary: '' });
  // By itself the file has the handle that HOSE.CATALOGUE gives in the workbook.
  expect(offer).toMatchObject({ handle: (await workbook.read([{ sheet: 'Jobs', address: 'C1' }]))[0]!.values[0]![0] });
});

test('a workbook with rows of its own is told what differs', async () => {
  expect(await offered(dearer)).toMatchObject({
    kind: 'differs',
    summary: '3 prices, 1 crimp row changed',
    isTaken: false,
    isPlain: false,
  });
});

test('a workbook that has what the office had before is offered the newer one', async () => {
  const workbook = ownWorkbook();
  const handle = await handleOf(workbook);
  expect(await offered(dearer, workbook, { known: new Set([handle]) })).toMatchObject({ kind: 'newer', isPlain: true });
  await rememberTaken(workbook, 'CAT-00000000 (of before)', handle);
  expect(await offered(dearer, workbook, { memory: await officeMemory(workbook) })).toMatchObject({ kind: 'newer' });
});

test.each<[string, RawTables]>([
  ['a part goes', { ...treeTables, hoses: treeTables.hoses.slice(0, -1) }],
  ['a row is left out', withCell('hoses', 1, 'Bore (mm)', 'wide')],
  ['a value looks wrong', withCell('hoses', 1, 'Working pressure (bar)', 2750)],
  ['a cell is blank now', withCell('hoses', 1, 'Price per length (per m)', null)],
  ['a heading is only guessed', { ...dearer, hoses: withHeading('Bend radius (mm)', 'Min. bend radius (mm)').hoses! }],
  ['units change', withHeading('Working pressure (bar)', 'Working pressure (MPa)')],
])('a newer one is looked at before it is taken where %s', async (_, tables) => {
  const workbook = ownWorkbook();
  const offer = await offered(tables, workbook, { known: new Set([await handleOf(workbook)]) });
  expect(offer).toMatchObject({ kind: 'newer', isPlain: false });
});

test('a row that somebody changed after taking the file is its own again, and the file counts as taken', async () => {
  const office = await offered(dearer);
  const workbook = ownWorkbook();
  await rememberTaken(workbook, 'handle' in office ? office.handle : '', 'CAT-11111111 (as it was then)');
  expect(await offered(dearer, workbook, { memory: await officeMemory(workbook) })).toMatchObject({
    kind: 'differs',
    isTaken: true,
  });
});

test('a workbook without parts data is offered the catalogue with its counts', async () => {
  expect(await offered(treeTables, new LiveWorkbook({ Sheet1: [] }))).toMatchObject({
    kind: 'first',
    summary: 'mm, bar; 4 hoses, 7 fittings, 5 crimps',
  });
});

test('new, changed and removed rows are counted a kind each; tables that the file lacks stay', async () => {
  const { hoses, fittings, crimps, machines } = treeTables;
  const other = ['Cedar DN 6', 'Cedar', null, null, 6.3, 200];
  const offer = await offered({ hoses: [...hoses.slice(0, -1), other], fittings, crimps });
  expect(offer).toMatchObject({ kind: 'differs', summary: '1 hose new, 1 hose removed' });
  expect('result' in offer && offer.result.catalogue!.machines).toHaveLength(machines.length - 1);
});

test('dials that are recorded in the workbook are not replaced by an office that does not know them', async () => {
  const withoutRecord = { ...treeTables, machines: treeTables.machines.slice(0, -1) };
  const same = await offered(withoutRecord);
  expect(same).toMatchObject({ kind: 'same', spared: new Set(['machines']) });
  // What the office adds to them is taken as usual.
  const more = withRows('machines', ['Bench 3', null, null, null, null, 0.05, 0.9, 100, 900, null, 'no']);
  expect(await offered(more)).toMatchObject({ kind: 'differs', summary: '1 machine row new', spared: new Set() });
});

test.each<[string, () => Promise<RawTables>, RegExp]>([
  ['too few tables', async () => ({ hoses: treeTables.hoses }), /^it has no table Fittings, no table Crimps$/],
  ['a heading without its unit', async () => withHeading('Bore (mm)', 'Bore'), /Bore/],
])('%s is named and not offered', async (_, tables, reason) => {
  const offer = await offered(await tables(), new LiveWorkbook({ Sheet1: [] }));
  expect(offer).toEqual({ kind: 'unusable', reason: expect.stringMatching(reason) });
});

function withHeading(from: string, to: string): RawTables {
  const [head, ...rows] = treeTables.hoses;
  return { ...treeTables, hoses: [head!.map(cell => (cell === from ? to : cell)), ...rows] };
}

test('a sheet that cannot be read makes the whole file unusable: half of a catalogue is none', async () => {
  const file = await officeTables(treeTables, ['Notes', { reason: 'catalogue/current.xlsx, sheet Notes has 300 columns' }]);
  const standing = await workbookCatalogue(standingWorkbook());
  expect(officeOffer({ file, standing, memory: NO_OFFICE_MEMORY, maps: new Map(), known: new Set() })).toEqual({
    kind: 'unusable',
    reason: 'catalogue/current.xlsx, sheet Notes has 300 columns',
  });
});

test('tables that a formula calculates cannot be replaced, so nothing is offered', async () => {
  const workbook = standingWorkbook();
  workbook.cells.get('Jobs')!.get('0,2')!.formula = FORMULA.replace('Hoses!A1:N5', 'SORT(Hoses!A1:N5)');
  expect(await offered(dearer, workbook)).toEqual({
    kind: 'unusable',
    reason: 'the pane cannot read which cells the CATALOGUE formula of this workbook takes, so it cannot replace them',
  });
});

describe('what the workbook remembers', () => {
  test('"not for this workbook" and its way back leave what was taken alone', async () => {
    const workbook = new LiveWorkbook({ Sheet1: [] });
    await rememberTaken(workbook, 'CAT-00000001', 'CAT-00000002');
    await declineOffice(workbook, true);
    expect(await officeMemory(workbook)).toEqual({ isDeclined: true, taken: 'CAT-00000001', handle: 'CAT-00000002' });
    await declineOffice(workbook, false);
    expect(await officeMemory(workbook)).toEqual({ isDeclined: false, taken: 'CAT-00000001', handle: 'CAT-00000002' });
  });

  test.each(['', 'no', '[]', '{"isDeclined":"yes","taken":1,"handle":""}'])('%j in the file is nothing', async text => {
    const workbook = new LiveWorkbook({ Sheet1: [] });
    workbook.remembered.set('office', text);
    expect(await officeMemory(workbook)).toEqual(NO_OFFICE_MEMORY);
  });
});
