import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { isSameCrimpSheet } from '../../../src/sheets/crimps/isSameCrimpSheet';
import { readCrimpSheet } from '../../../src/sheets/crimps/crimpSheet';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';

const rows = (reading: FakeCell = 27.3): FakeCell[][] => [
  ['Combination', 'Reading 1', 'Reading 2', 'Target', 'Tolerance'],
  ['Larch', 27.4, 27.5, 27.35, 0.12],
  ['Larch', reading, 27.5, 27.35, 0.12],
];
const look = async (address: string, cells = rows()) =>
  (await readCrimpSheet(fakeWorkbook({ Week: cells }, { sheet: 'Week', address }).workbook))!;

test('only the selected cell moved: the same view', async () =>
  expect(isSameCrimpSheet(await look('A2'), await look('B3'))).toBe(true));
test('a reading changed: another view', async () =>
  expect(isSameCrimpSheet(await look('A2'), await look('A2', rows(27.6)))).toBe(false));
test('a reading became an error: another view', async () =>
  expect(isSameCrimpSheet(await look('A2'), await look('A2', rows({ error: '#N/A' })))).toBe(false));
test('other rows are picked: another view', async () => {
  expect(isSameCrimpSheet(await look('A2'), await look('A2:A3'))).toBe(false);
  expect(isSameCrimpSheet(await look('A2:A3'), await look('B2:B3'))).toBe(true);
});
test('a row was added: another view', async () =>
  expect(isSameCrimpSheet(await look('A2'), await look('A2', [...rows(), ['Larch', 27.4, 27.4, 27.35, 0.12]]))).toBe(false));
test('a question was answered: another view', async () => {
  const { workbook } = fakeWorkbook({ Week: rows() }, { sheet: 'Week', address: 'A2' });
  const before = (await readCrimpSheet(workbook))!;
  await rememberAnswer(workbook, 'crimps', 'Week', 'unit', 'Reading 1', 'mm');
  expect(isSameCrimpSheet(before, (await readCrimpSheet(workbook))!)).toBe(false);
});
test('a blank sheet has no crimps', async () => {
  const { workbook } = fakeWorkbook({ Week: [['Hello']] }, { sheet: 'Week', address: 'A1' });
  expect((await readCrimpSheet(workbook))!.own).toBeUndefined();
});
