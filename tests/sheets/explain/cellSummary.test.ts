import { cellSummary } from '../../../src/sheets/explain/cellSummary';
import type { RowResult } from '../../../src/sheets/explain/rowView';
import type { CrimpVerdict } from '../../../src/core/crimp/crimpVerdict';

const call = { id: 'CUTLENGTH', description: '', helpUrl: '', arguments: [] };
const results = (...verdicts: readonly CrimpVerdict[]): RowResult[] =>
  verdicts.map(verdict => ({ title: 'CrimpVerdict', text: verdict, verdict, isError: false }));

test('a function and what it gives', () => {
  expect(cellSummary({ address: 'J6', shown: '1035.5', call }, [])).toEqual({
    text: 'J6 HOSE.CUTLENGTH: 1035.5',
    isWrong: false,
  });
  expect(cellSummary({ address: 'J6', shown: '', call }, []).text).toBe('J6 HOSE.CUTLENGTH');
});

test('a cell without a function of ours', () =>
  expect(cellSummary({ address: 'A3', shown: 'Boom', sentence: undefined }, [])).toEqual({
    text: 'A3: no Benchrow function',
    isWrong: false,
  }));

test('an error comes first, with its sentence where there is one', () => {
  const error = { address: 'J6', shown: '#VALUE!', call, error: '#VALUE!', sentence: 'overall is "x": enter a number' };
  expect(cellSummary(error, results('LOOSE'))).toEqual({ text: 'J6 #VALUE!: overall is "x": enter a number', isWrong: true });
  expect(cellSummary({ address: 'J6', shown: '#REF!', error: '#REF!' }, []).text).toBe('J6 #REF!');
});

test('the worst verdict of the row, not said twice where it is the cell itself', () => {
  const cell = { address: 'J6', shown: '27.5', call };
  expect(cellSummary(cell, results('IN SPEC', 'OVAL'))).toEqual({
    text: 'J6 HOSE.CUTLENGTH: 27.5 · this row: OVAL',
    isWrong: true,
  });
  expect(cellSummary(cell, results('IN SPEC'))).toMatchObject({
    text: expect.stringMatching(/this row: IN SPEC$/),
    isWrong: false,
  });
  expect(cellSummary({ ...cell, shown: 'LOOSE' }, results('LOOSE', 'IN SPEC')).text).toBe('J6 HOSE.CUTLENGTH: LOOSE');
});
