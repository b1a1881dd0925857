import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { isSameView } from '../../../src/sheets/crimps/isSameView';
import { measurementsView } from '../../../src/sheets/crimps/measurementsView';

const rows = (reading: FakeCell = 27.3): FakeCell[][] => [
  ['Combination', 'Reading 1', 'Reading 2', 'Target', 'Tolerance'],
  ['Larch', 27.4, 27.5, 27.35, 0.12],
  ['Larch', reading, 27.5, 27.35, 0.12],
];
const look = (address: string, cells = rows()) =>
  measurementsView(fakeWorkbook({ Week: cells }, { sheet: 'Week', address }).workbook);

test('only the selected cell moved: the same view', async () =>
  expect(isSameView(await look('A2'), await look('B3'))).toBe(true));
test('a reading changed: another view', async () =>
  expect(isSameView(await look('A2'), await look('A2', rows(27.6)))).toBe(false));
test('a reading became an error: another view', async () =>
  expect(isSameView(await look('A2'), await look('A2', rows({ error: '#N/A' })))).toBe(false));
test('other rows are picked: another view', async () => {
  expect(isSameView(await look('A2'), await look('A2:A3'))).toBe(false);
  expect(isSameView(await look('A2:A3'), await look('B2:B3'))).toBe(true);
});
test('a row was added: another view', async () =>
  expect(isSameView(await look('A2'), await look('A2', [...rows(), ['Larch', 27.4, 27.4, 27.35, 0.12]]))).toBe(false));
test('no measurements, twice: the same view', async () => {
  const none = () => look('A1', [['Hello']]);
  expect(isSameView(await none(), await none())).toBe(true);
  expect(isSameView(await none(), await look('A2'))).toBe(false);
});
