import { rememberAnswer, tableAnswers } from '../../../src/sheets/table/tableAnswers';
import { shownWorkbook } from '../../../src/workbook/shownWorkbook';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const book = () => fakeWorkbook({ Jobs: [['Hose', 'Length']] }, { sheet: 'Jobs', address: 'A1' }).workbook;

test('answers that are given at the same time are all remembered, from whichever view they come', async () => {
  const workbook = book();
  const view = shownWorkbook(workbook).workbook;
  await Promise.all([
    rememberAnswer(workbook, 'jobs', 'Jobs', 'unit', 'Length', 'mm'),
    rememberAnswer(view, 'jobs', 'Jobs', 'role', 'Hadice', 'hose'),
    rememberAnswer(workbook, 'jobs', 'Jobs', 'role', 'Kusů', 'quantity'),
  ]);
  const { role, unit } = await tableAnswers(workbook, 'jobs', 'Jobs');
  expect([...role]).toEqual([
    ['hadice', 'hose'],
    ['kusů', 'quantity'],
  ]);
  expect([...unit]).toEqual([['length', 'mm']]);
});

test('an answer that could not be remembered says so, and does not hold up the next', async () => {
  const fake = book();
  let isBroken = true;
  const workbook: typeof fake = {
    ...fake,
    remember: (key, text) => (isBroken ? Promise.reject(new Error('the workbook is read-only')) : fake.remember(key, text)),
  };
  const first = rememberAnswer(workbook, 'jobs', 'Jobs', 'unit', 'Length', 'mm');
  const second = first.catch(() => {
    isBroken = false;
  });
  await expect(first).rejects.toThrow('read-only');
  await second;
  await rememberAnswer(workbook, 'jobs', 'Jobs', 'unit', 'Length', 'in');
  expect((await tableAnswers(workbook, 'jobs', 'Jobs')).unit.get('length')).toBe('in');
});
