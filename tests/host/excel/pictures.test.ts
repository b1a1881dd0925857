import { writeChanges } from '../../../src/host/excel/writeChanges';
import type { Change } from '../../../src/workbook/workbook';
import { strictExcel } from './strictExcel';

// Drawing needs a browser: tests/browser looks at what it gives.
jest.mock('../../../src/host/excel/pngOfSvg', () => ({ pngOfSvg: async (svg: string) => `png of ${svg}` }));

const changes: readonly Change[] = [
  { kind: 'picture', at: { sheet: 'Tags', address: 'B2:B4' }, svg: '<svg/>', alt: 'QR code of 117' },
  { kind: 'values', at: { sheet: 'Tags', address: 'A2' }, values: [[117]] },
];
const open = () => strictExcel({ Tags: [['Number', 'Code']] }, { sheet: 'Tags', row: 0, column: 0, rows: 1, columns: 1 });
const office = (version: string) =>
  Object.assign(globalThis, {
    Office: {
      context: {
        requirements: { isSetSupported: (_: string, asked: string) => Number(asked.slice(2)) <= Number(version.slice(2)) },
      },
    },
  });

test('a picture comes last, square, within its block, with its words for those who cannot see it', async () => {
  const excel = open();
  office('1.10');
  await writeChanges(changes);
  expect(excel.written).toEqual([
    'values of Tags!A2 = [[117]]',
    'picture png of <svg/> on Tags',
    'picture lockAspectRatio = false',
    'picture width = 43',
    'picture height = 43',
    'picture left = 49',
    'picture top = 16',
    'picture lockAspectRatio = true',
    'picture altTextDescription = "QR code of 117"',
    'picture placement = "OneCell"',
  ]);
});

test('an Excel that takes no pictures (before ExcelApi 1.10) writes the rest all the same, and says so', async () => {
  const excel = open();
  office('1.9');
  await expect(writeChanges(changes)).rejects.toThrow(
    'This version of Excel cannot take pictures from add-ins, so they are missing. A newer one can. All cells are written.',
  );
  expect(excel.written).toEqual(['values of Tags!A2 = [[117]]']);
});

test('pictures that are more than one request of Excel on the web takes go in several', async () => {
  const excel = open();
  office('1.10');
  const large = (row: number): Change => ({
    kind: 'picture',
    at: { sheet: 'Tags', address: `B${row}` },
    svg: 'x'.repeat(1_400_000),
    alt: `row ${row}`,
  });
  await writeChanges([large(2), large(3), large(4)]);
  // The first two pictures in one request, the third in another; each is a step of undo.
  expect(excel.book.undoSteps.map(step => step.filter(text => text.includes('altText')).length)).toEqual([2, 1]);
  expect(excel.written.filter(text => text.includes('altText'))).toHaveLength(3);
});
