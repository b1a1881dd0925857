import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';

/** A function that counts its calls and gives a row of three: what came, and its double, and its triple. */
let calls: number;
let open: HeadlessWorkbook;
let port: UniverWorkbook;
const parameters = [{ name: 'value', type: 'any', dimensionality: 'matrix' }];

beforeEach(() => {
  calls = 0;
  const times = (cells: unknown[][]) => {
    const value = cells[0]![0];
    calls += 1;
    return [[Number(value), 2 * Number(value), 3 * Number(value)]];
  };
  const plusOne = (cells: unknown[][]) => {
    const value = cells[0]![0];
    calls += 1;
    return [[Number(value) + 1]];
  };
  const entry = (id: string) => ({ id, name: id, parameters, result: { dimensionality: 'matrix' } });
  const file = { functions: ['TIMES', 'PLUSONE'].map(entry), allowErrorForDataTypeAny: true };
  const given = new Map([
    ['TIMES', times],
    ['PLUSONE', plusOne],
  ]);
  open = headlessWorkbook(
    {
      id: 'book',
      sheetOrder: ['s'],
      sheets: {
        s: {
          id: 's',
          name: 'Sheet',
          cellData: {
            // What reads a filled cell stands before the formula that fills it, and a chain goes on from there.
            0: { 0: { f: '=HOSE.PLUSONE(E3)' }, 1: { f: '=HOSE.PLUSONE(A1)' } },
            1: { 0: { v: 7 }, 2: { f: '=HOSE.TIMES(E3)' } },
            2: { 2: { f: '=HOSE.TIMES(A2)' } },
            3: { 0: { f: '=HOSE.PLUSONE(A2)' } },
            // So do this one and the one above, and fill cells themselves.
            4: { 0: { f: '=HOSE.TIMES(D3)' } },
          },
        },
      },
    } as never,
    hostFunctions(file as never, given as never),
  );
  port = new UniverWorkbook(open.univer, open.api);
});
afterEach(() => open.dispose());

const values = async () => (await port.read([{ sheet: 'Sheet', address: 'A1:E5' }]))[0]!.values;

test('cells that read what a formula fills are right at the first calculation, however they are ordered', async () => {
  await open.calculate();
  expect((await values())[0]!.slice(0, 2)).toEqual([22, 23]);
  expect((await values())[2]!.slice(2)).toEqual([7, 14, 21]);
  expect((await values())[4]!.slice(0, 3)).toEqual([14, 28, 42]);
  expect((await values())[1]!.slice(2)).toEqual([21, 42, 63]);
});

test('what does not read a filled cell is calculated once', async () => {
  await open.calculate();
  calls = 0;
  await open.calculate();
  // Of the six formulas two read typed cells alone; the four that rest on filled cells may be calculated twice.
  expect(calls).toBeLessThanOrEqual(2 + 2 * 4);
});

test('a changed input goes through to what reads the filled cells', async () => {
  await open.calculate();
  await port.write([{ kind: 'values', at: { sheet: 'Sheet', address: 'A2' }, values: [[10]] }]);
  await open.calculate();
  expect((await values())[0]!.slice(0, 2)).toEqual([31, 32]);
  expect((await values())[4]!.slice(0, 3)).toEqual([20, 40, 60]);
  expect((await values())[1]!.slice(2)).toEqual([30, 60, 90]);
});

test('so does one that the page calculates by itself', async () => {
  await open.calculate();
  await port.write([{ kind: 'values', at: { sheet: 'Sheet', address: 'A2' }, values: [[10]] }]);
  await new Promise(resolve => setTimeout(resolve, 1500));
  expect((await values())[0]!.slice(0, 2)).toEqual([31, 32]);
  expect((await values())[4]!.slice(0, 3)).toEqual([20, 40, 60]);
  expect((await values())[1]!.slice(2)).toEqual([30, 60, 90]);
});
