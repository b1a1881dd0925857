import { columnsView, sameTable, type ColumnsRead } from '../../../src/sheets/columns/columnsView';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const JOBS = [
  ['Hose', 'Overall (mm)', 'Qty'],
  ['Larch DN 12', 900, 4],
  ['Larch DN 8', 700, 2],
];
const withPrice = JOBS.map((row, index) => [...row, ['Price', 25, 18][index]!]);
const renamed = [['Part', 'Overall (mm)', 'Qty'], ...JOBS.slice(1)];

const viewOf = (rows: readonly (readonly (string | number)[])[], sheet = 'Jobs', above = 0): Promise<ColumnsRead> => {
  const blank = Array.from({ length: above }, () => ['']);
  return columnsView(fakeWorkbook({ [sheet]: [...blank, ...rows] }, { sheet, address: `A${above + 2}` }).workbook);
};
const idOf = (view: ColumnsRead) => (view.status === 'ready' ? view.id : view.status);

describe('a view that is read anew', () => {
  test.each([
    ['the same', JOBS, JOBS],
    ['wider by a column', withPrice, JOBS],
    ['narrower by a column', JOBS, withPrice],
  ])('is known again where its table is %s', async (_, now, before) => {
    const seen = await viewOf(before);
    const again = sameTable(await viewOf(now), seen);
    expect(idOf(again)).toBe(idOf(seen));
    expect(again).toEqual({ ...(await viewOf(now)), id: idOf(seen) });
  });

  test.each([
    ['with another heading', viewOf(renamed)],
    ['of another sheet', viewOf(JOBS, 'Week 42')],
    ['further down', viewOf(JOBS, 'Jobs', 3)],
  ])('is another one where it is a table %s', async (_, reading) => {
    const [now, seen] = [await reading, await viewOf(JOBS)];
    expect(sameTable(now, seen)).toBe(now);
    expect(idOf(now)).not.toBe(idOf(seen));
  });

  test('is what was found where there was no table before, or is none now', async () => {
    const [none, jobs] = [await viewOf([]), await viewOf(JOBS)];
    expect(none).toEqual({ status: 'none' });
    expect(sameTable(jobs, none)).toBe(jobs);
    expect(sameTable(none, jobs)).toBe(none);
  });
});
