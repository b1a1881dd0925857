import { rowsLooked, type AddedColumns } from '../../../src/sheets/columns/needLook';
import type { CellValue } from '../../../src/workbook/workbook';

const added: AddedColumns = {
  sheet: 'Jobs',
  block: { row: 3, column: 8, rows: 6, columns: 2 },
  columns: [
    { heading: 'Dial A', good: undefined },
    { heading: 'Assembly check', good: 'OK' },
  ],
  others: new Set([8]),
};

const NOT_FOUND = { error: '#N/A', sentence: 'Hose "Alder DN 99" is not in the catalogue' };

function looked(values: readonly (readonly CellValue[])[]) {
  const blank = values.map(row => row.map(() => ''));
  return rowsLooked(added, { sheet: 'Jobs', address: 'I4:J9', row: 3, column: 8, values, formulas: blank, formats: blank });
}

const HEADS = ['Dial A', 'Assembly check'];

test('rows with an error or an answer that is not the good one need a look; each is named with its first such cell', () => {
  expect(looked([HEADS, [412, 'OK'], [NOT_FOUND, NOT_FOUND], ['', ''], [405, 'families differ'], ['', 'total']])).toEqual({
    rows: 3,
    needLook: [
      { row: 6, at: 'I6', what: 'Dial A: #N/A, Hose "Alder DN 99" is not in the catalogue' },
      { row: 8, at: 'J8', what: 'Assembly check: families differ' },
    ],
    isWaiting: false,
  });
});

test('what is still being calculated is waited for and not counted as a fault', () => {
  expect(looked([HEADS, [{ error: '#BUSY!' }, { error: '#BUSY!' }], [1, 'OK']])).toEqual({
    rows: 2,
    needLook: [],
    isWaiting: true,
  });
  expect(looked([HEADS, ['', ''], ['', '']])).toEqual({ rows: 0, needLook: [], isWaiting: true });
});

test('a formula that Excel refuses to spill is named with what to do', () => {
  const [found] = looked([HEADS, [{ error: '#SPILL!' }, '']]).needLook;
  expect(found).toEqual({
    row: 5,
    at: 'I5',
    what: expect.stringMatching(/^Dial A: #SPILL!, the cells .* are not empty: clear or move/),
  });
});
