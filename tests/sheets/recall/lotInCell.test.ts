import { readPieces } from '../../../src/sheets/pieces/readPieces';
import { lotInCell } from '../../../src/sheets/recall/lotInCell';
import { recallPieces } from '../../../src/sheets/recall/recallPieces';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

test.each([
  ['L70', 'L70', 'named'],
  [' l70 ', 'L70', 'named'],
  ['L70; L71', 'L71', 'named'],
  ['L70/L71', 'L70', 'named'],
  ['L70 + L71 & L72', 'L72', 'named'],
  ['L70 and L71', 'L71', 'named'],
  ['L70\nL71', 'L71', 'named'],
  ['24/117', '24/117', 'named'],
  ['A, first', 'a, first', 'named'],
  ['L70 L71', 'L70', 'mentioned'],
  ['L70 (3 m) + L71 (2 m)', 'L71', 'mentioned'],
  ['Lot L70', 'L70', 'mentioned'],
  ['L70?', 'L70', 'mentioned'],
  ['L71?', 'L70', 'mentioned'],
  ['L71 (was L70)', 'L70', 'mentioned'],
  ['L-70', 'L70', 'mentioned'],
  ['L 70; L71', 'l70', 'mentioned'],
  ['L70', 'L-70', 'mentioned'],
  ['L70-2', 'L70', 'mentioned'],
  ['L70', 'L70-2', 'mentioned'],
  ['L70', 'Lot L70', 'mentioned'],
  ['L68 to L72', 'L70', 'mentioned'],
  ['L68-L72', 'L-70', 'mentioned'],
  ['L68 … 72', 'L70', 'mentioned'],
  ['L60; L68–L72', 'L70', 'mentioned'],
  ['', 'L70', 'none'],
  ['–', 'L70', 'none'],
  ['n/a', 'L70', 'none'],
  ['unknown', 'L70', 'none'],
  ['L71', 'L70', 'other'],
  ['L701', 'L70', 'other'],
  ['XL70', 'L70', 'other'],
  ['L7', 'L70', 'other'],
  ['Sand', 'S', 'other'],
  ['52/24', '41/24', 'other'],
  ['L68 to L72', 'L73', 'other'],
  ['L68 to L72', 'M70', 'other'],
  ['24-117', '24-118', 'other'],
])('a cell “%s”, asked for %s: %s', (cell, lot, says) => {
  expect(lotInCell(cell, lot)).toBe(says);
});

test('a cell of 32,000 characters is read at once', () => {
  const began = process.cpuUsage().user;
  expect(lotInCell('L '.repeat(16000), 'L70')).toBe('other');
  expect(lotInCell('L70'.repeat(10000), 'L70')).toBe('other');
  expect(lotInCell('1'.repeat(32000), 'L70')).toBe('other');
  expect(lotInCell('l'.repeat(32000), 'L70')).toBe('other');
  expect((process.cpuUsage().user - began) / 1000).toBeLessThan(500);
});

test('no piece whose cell has the lot in it is left out: lists are hits, all other spellings cannot be excluded', async () => {
  const lots = [
    'L70\nL71',
    'L70 L71',
    'L70 (3 m) + L71 (2 m)',
    'Lot L70',
    'L70?',
    'L71 (was L70)',
    'L-70',
    'L70-2',
    'L80',
    'L70/L71',
  ];
  const { workbook } = fakeWorkbook(
    {
      Pieces: [['Piece', 'Hose', 'Lot', 'Status'], ...lots.map((lot, index) => [`P-${index + 1}`, 'Larch DN 12', lot, 'done'])],
    },
    { sheet: 'Pieces', address: 'A1' },
  );
  const { pieces } = (await readPieces(workbook))!;
  const found = recallPieces(pieces, { by: 'lot', lot: 'L70', of: 'hose', part: '' });
  expect(found.map(({ piece, kind, why }) => `${piece.piece} ${kind}: ${why}`)).toEqual([
    'P-1 hit: hose lot L70; L71',
    'P-2 open: hose lot "L70 L71"',
    'P-3 open: hose lot "L70 (3 m) + L71 (2 m)"',
    'P-4 open: hose lot "Lot L70"',
    'P-5 open: hose lot "L70?"',
    'P-6 open: hose lot "L71 (was L70)"',
    'P-7 open: hose lot "L-70"',
    'P-8 open: hose lot "L70-2"',
    'P-10 hit: hose lot L70/L71',
  ]);
});
