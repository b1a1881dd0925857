import { IDependencyManagerService } from '@univerjs/engine-formula';
import { headlessWorkbook, type HeadlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { eventually } from '../../eventually';

let open: HeadlessWorkbook;
let port: UniverWorkbook;

const sheet = (id: string, cellData: object) => ({ id, name: id, cellData });

beforeEach(async () => {
  const data = {
    id: 'book',
    sheetOrder: ['Sums', 'Numbers'],
    sheets: {
      Sums: sheet('Sums', { 0: { 0: { f: '=SUM(Numbers!A1:A3)' } }, 1: { 0: { f: '=SUM(A1:B1)' } } }),
      Numbers: sheet('Numbers', { 0: { 0: { v: 1 } }, 1: { 0: { v: 2 } }, 2: { 0: { v: 3 } }, 5: { 0: { v: 100 } } }),
    },
  };
  open = headlessWorkbook(data as never, hostFunctions({ functions: [] } as never, new Map() as never));
  port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
});
afterEach(() => open.dispose());

/** Ranges of several cells that the engine's register holds of a sheet. */
function registered(sheetId: string): number {
  const register = open.univer.__getInjector().get(IDependencyManagerService) as unknown as {
    _dependencyRTreeCache: { getTree(unit: string, sheet: string): { all(): unknown[] } };
  };
  return register._dependencyRTreeCache.getTree('book', sheetId).all().length;
}

const write = (address: string, value: number, on = 'Numbers') =>
  port.write([{ kind: 'values', at: { sheet: on, address }, values: [[value]] }]);
/** The sums, once what was changed has gone through to them. */
const expectSums = (...expected: number[]) =>
  eventually(async () => expect((await port.read([{ sheet: 'Sums', address: 'A1:A2' }]))[0]!.values.flat()).toEqual(expected));

test('the register of what reads what is as large after many edits as before', async () => {
  const before = [registered('Numbers'), registered('Sums')];
  expect(before).toEqual([1, 1]);
  for (let value = 1; value <= 20; value++) {
    await write('A1', value);
    await expectSums(value + 5, value + 5);
  }
  expect([registered('Numbers'), registered('Sums')]).toEqual(before);
});

test('a formula that was changed follows what it reads now, and no longer what it read', async () => {
  await port.write([{ kind: 'formulas', at: { sheet: 'Sums', address: 'A1' }, formulas: [['=SUM(Numbers!A5:A7)']] }]);
  await expectSums(100, 100);
  await write('A6', 7);
  await expectSums(7, 7);
  // Numbers!A1 is read no longer.
  await write('A1', 50);
  await expectSums(7, 7);
  await port.write([{ kind: 'formulas', at: { sheet: 'Sums', address: 'A1' }, formulas: [['=SUM(Numbers!A1:A3)']] }]);
  await write('A2', 20);
  await expectSums(73, 73);
});

test('formulas still follow after another sheet was added and taken away, and after everything is calculated anew', async () => {
  await port.write([{ kind: 'addSheet', sheet: 'Other' }]);
  await port.write([{ kind: 'formulas', at: { sheet: 'Other', address: 'A1' }, formulas: [['=SUM(Numbers!A1:A3)']] }]);
  await port.write([{ kind: 'removeSheet', sheet: 'Other' }]);
  await write('A3', 30);
  await expectSums(33, 33);
  await open.calculate();
  await write('A3', 31);
  await expectSums(34, 34);
});
