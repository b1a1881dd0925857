import { heldSentences } from '../../../src/sheets/quote/heldSentences';

test('rows that do not follow are named by what is a text in them', () => {
  const lines = [
    { row: 5, held: [] },
    { row: 6, held: ['overall'] as const },
    { row: 8, held: ['overall', 'quantity'] as const },
    { row: 9, held: ['overall'] as const },
  ];
  expect(heldSentences(lines)).toEqual([
    'Rows 6, 9 do not follow the job sheet: their length is a text.',
    'Row 8 does not follow the job sheet: its length and quantity are texts.',
  ]);
  expect(heldSentences([])).toEqual([]);
});
