import { cellsOf, treeTables, withCell, withRows } from '../core/catalogue/treeCatalogue';
import { treeFluids } from '../core/catalogue/treeFluids';
import { CellError, excelCall } from './excelCall';
import { lookupFunctions, type LookupFunction } from './lookupFunctions';

const [hose, straight] = ['Alder DN 12', 'Alder cone straight DN 12'];
let handle: unknown;
beforeAll(async () => ([[handle]] = (await excelCall('CATALOGUE', ...cellsOf(treeTables))) as [[unknown]]));

/** The call with so many rows; `change` replaces cells of an argument of the rows, by its place and row. */
function call({ id, rows, whole }: LookupFunction, height: number, change?: { at: number; row: number; cell: unknown }) {
  const columns = rows.map((good, at) =>
    Array.from({ length: height }, (_, row) => [change?.at === at && change.row === row ? change.cell : good]),
  );
  return excelCall(id, handle, ...columns, ...whole);
}

describe.each(lookupFunctions)('$id', lookup => {
  const { id, rows, whole, answer } = lookup;
  const all = (cell: unknown) => answer.map(() => cell);
  const places = rows.map((_, at) => at);

  test('gives one row a row; single values are stretched; thousands in one call', async () => {
    expect(await call(lookup, 1)).toEqual([answer]);
    const [first, ...others] = rows;
    expect(await excelCall(id, handle, [[first], [first], [first]], ...others, ...whole)).toEqual([answer, answer, answer]);
    const many = await call(lookup, 5000);
    expect([many.length, many[4999]]).toEqual([5000, answer]);
  });

  test('a row without its first argument is blank, another blank is an error of its row', async () => {
    for (const cell of [null, '', ' ']) {
      expect(await call(lookup, 3, { at: 0, row: 1, cell })).toEqual([answer, all(''), answer]);
      for (const at of places.slice(1)) {
        const blank = expect.stringMatching(/^#VALUE! .+ is blank: fill it in$/);
        expect(await call(lookup, 3, { at, row: 1, cell })).toEqual([answer, all(blank), answer]);
      }
    }
  });

  test('an error stays in its row, however it arrives', async () => {
    for (const at of places) {
      const error = (cell: unknown) => call(lookup, 2, { at, row: 0, cell });
      expect(await error(new CellError('#NUM!', 'sent'))).toEqual([all('#NUM! sent'), answer]);
      const named = expect.stringMatching(/^#N\/A .+ holds #REF!: correct that cell first$/);
      expect(await error({ type: 'Error', basicType: 'Error', basicValue: '#REF!' })).toEqual([all(named), answer]);
    }
  });

  test('a part that is not there is #N/A in its row and is quoted', async () => {
    const names = rows.filter(value => typeof value === 'string').length;
    for (const at of places.slice(0, names)) {
      const missing = expect.stringMatching(/^#N\/A .*No such part/);
      expect(await call(lookup, 2, { at, row: 1, cell: 'No such part' })).toEqual([answer, all(missing)]);
    }
  });

  test('a catalogue that is blank, an error or none is the answer of the whole', async () => {
    const other = (cell: unknown) => excelCall(id, cell, ...rows, ...whole);
    expect(await other('')).toEqual([['#VALUE! catalogue is blank: fill it in']]);
    expect(await other(new CellError('#N/A', 'sent'))).toEqual([['#N/A sent']]);
    expect(await other('seven')).toEqual([[expect.stringMatching(/^#VALUE! catalogue is "seven": /)]]);
    const stranger = 'CAT-00000000 (mm, bar; 1 hose, 1 fitting, 1 crimp)';
    expect(await other(stranger)).toEqual([[expect.stringMatching(/^#N\/A .*CAT-00000000.* is not loaded: recalculate/)]]);
  });
});

test('the handle says units and counts, is made from what stands in known columns, and from nothing else', async () => {
  expect(handle).toMatch(/^CAT-[0-9a-f]{8} \(mm, bar; 4 hoses, 7 fittings, 5 crimps\)$/);
  const turned = cellsOf(treeTables).map(table => table?.map(row => [...row, 'own'].reverse().concat('')) ?? null);
  const longer = turned.map(table => table && [...table, ...table.slice(0, 3).map(row => row.map(() => ''))]);
  expect(await excelCall('CATALOGUE', ...longer)).toEqual([[handle]]);
  const [[other]] = (await excelCall('CATALOGUE', ...cellsOf(withCell('hoses', 1, 'Bore (mm)', 12.8)))) as [[string]];
  expect([other.slice(12), other === handle]).toEqual([String(handle).slice(12), false]);
});

test('a bad row and all rows of a duplicate are left out and counted; what is missing of a heading ends the whole', async () => {
  const bad = withRows('hoses', [...treeTables.hoses[1]!], ['Yew', 'Yew', null, null, 'wide', null, 10]);
  expect((await excelCall('CATALOGUE', ...cellsOf(bad)))[0]![0]).toMatch(/ 3 hoses, .*\); 3 rows left out$/);
  for (const heading of ['Diameter inside', 'Bore']) {
    const tables = cellsOf(withCell('hoses', 0, 'Bore (mm)', heading));
    expect(await excelCall('CATALOGUE', ...tables)).toEqual([[expect.stringMatching(/^#VALUE! Hoses .*"Bore"/)]]);
  }
});

test('the two searches answer with a heading, and with #N/A where nothing suits', async () => {
  const hoses = (...duty: unknown[]) => excelCall('FINDHOSE', handle, ...duty);
  const header = ['Hose', 'Standard', 'Working pressure', 'Bend radius', 'Price', 'Margin of pressure'];
  // At 80 °C the table of deratings leaves 165 × .9 of Alder DN 25.
  expect(await hoses(20, '148.5', 340, -40, 80)).toEqual([
    header,
    ['Alder DN 25', 'EN 853 2SN', 148.5, 300, 16.5, 0],
    ['Birch DN 25', 'EN 856 4SH', 380, 340, 31, 231.5],
  ]);
  expect(await hoses(20, 10, 340, -40, 80, 'Mineral Oil', -0.8)).toEqual([header, ['Willow DN 25', '', 20, 150, '', 10]]);
  expect(await hoses(20, 500, 340, -40, 80)).toEqual([[expect.stringMatching(/^#N\/A no hose .* suits/)]]);
  expect(await hoses(20, '', 340, -40, 80)).toEqual([['#VALUE! pressure is blank: fill it in']]);
  expect(await excelCall('FINDFITTING', handle, hose, '24° CONE', 'straight')).toEqual([
    ['Fitting', 'End form', 'Thread', 'Angle', 'Price'],
    [straight, '24° cone', 'M22x1.5', 0, 4],
  ]);
  expect(await excelCall('FINDFITTING', handle, hose, 'hose tail')).toEqual([[expect.stringMatching(/^#N\/A /)]]);
});

test('temperature, fluid and guard come behind the arguments there were, row by row, and may be blank', async () => {
  const guards = [
    ['Guard', 'Price per length (per m)'],
    ['coil', 4],
  ];
  const tables = cellsOf({ ...treeTables, guards, fluids: treeFluids });
  const [[full]] = (await excelCall('CATALOGUE', ...tables)) as [[unknown]];
  const end = 'Alder cone straight DN 25';
  const temperatures = [[80], [''], [60], [65]];
  const fluids = [[''], ['HFC'], ['HFC'], ['water glycol']];
  const made = (await excelCall('ASSEMBLY', full, 'Alder DN 25', end, end, 900, temperatures, fluids)) as unknown[][];
  // 165 × .9 at 80 °C by Derating; 60 °C is the most with that fluid by Fluids.
  expect(made.map(row => [row[1], row[3]])).toEqual([
    [148.5, 'OK'],
    [165, 'OK'],
    [165, 'OK'],
    ['', 'hotter than Alder DN 25 allows with water glycol: 65 °C, at most 60 °C'],
  ]);
  // 960 mm of 8 + 4 a metre with 4 % scrap.
  expect(await excelCall('UNITCOST', full, hose, straight, 'Alder cone elbow DN 12', 1035.5, 10, [['coil'], ['']])).toEqual([
    [12, 13, 8, 33],
    [8, 13, 8, 29],
  ]);
  expect(await excelCall('UNITCOST', full, hose, straight, straight, 200, 10)).toEqual([
    Array(4).fill('#N/A too short: 88 mm of free hose, at least 100 mm'),
  ]);
});
