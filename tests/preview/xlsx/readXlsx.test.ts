import { strToU8, zipSync } from 'fflate';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { UnreadableFile } from '../../../src/preview/xlsx/unreadableFile';
import { workshopFile } from '../workshopFile';

describe('files that cannot be opened', () => {
  const cut = async () => (await workshopFile()).slice(0, 3000);
  const farCell = () => workshopFile(workbook => (workbook.getWorksheet('Jobs')!.getCell('A150000').value = 1));

  it.each([
    ['an empty file', async () => new Uint8Array(), 'jobs.xlsx is empty.'],
    ['text', async () => strToU8('overall;cut-off'), 'is not an .xlsx workbook'],
    [
      'an old or protected workbook',
      async () => new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1]),
      'old .xls workbook or protected',
    ],
    ['a file cut short', cut, 'could not be read: it is damaged'],
    ['some other zip file', async () => zipSync({ 'readme.txt': strToU8('hello') }), /could not be read|holds no worksheet/],
    ['a sheet with 150,000 rows', farCell, 'sheet Jobs has 150,000 rows'],
  ])('%s: a sentence says what is wrong and what to do', async (_, file, sentence) => {
    const reading = readXlsx(await file(), 'jobs.xlsx');
    await expect(reading).rejects.toThrow(UnreadableFile);
    await expect(reading).rejects.toThrow(sentence);
  });
});

describe('what a sheet of a file may hold', () => {
  const cellsOf = async (fill: (sheet: any) => void) => {
    const { cells, data } = await readXlsx(await workshopFile(workbook => fill(workbook.addWorksheet('Other'))));
    return { cells: cells.filter(cell => cell.sheet === 'Other'), sheet: data.sheets[data.sheetOrder[1]!]! };
  };

  it('gives a merged block its one value, in its first cell', async () => {
    const { cells, sheet } = await cellsOf(other => {
      other.getCell('B2').value = 'Merged';
      other.mergeCells('B2:D3');
    });
    expect(cells).toEqual([{ sheet: 'Other', address: 'B2', cached: 'Merged' }]);
    expect(sheet.mergeData).toEqual([{ startRow: 1, endRow: 2, startColumn: 1, endColumn: 3 }]);
  });

  it('keeps blank cells with a style, text of digits as text, links and rich text as their text', async () => {
    const { cells, sheet } = await cellsOf(other => {
      other.getCell('A1').fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFFFF2CC' } };
      other.getCell('A2').value = '007';
      other.getCell('A3').value = { text: 'Help', hyperlink: 'https://example.org' };
      other.getCell('A4').value = { richText: [{ text: 'DN ' }, { text: '25', font: { bold: true } }] };
    });
    expect(cells.map(cell => cell.cached)).toEqual(['007', 'Help', 'DN 25']);
    expect(sheet.cellData![0]![0]!.s).toBeDefined();
    expect(sheet.cellData![1]![0]).toMatchObject({ v: '007', t: 1 });
  });

  it('works out shared formulas', async () => {
    const { cells } = await cellsOf(other => {
      other.getCell('A1').value = 1;
      other.getCell('A2').value = 2;
      other.getCell('B1').value = { formula: 'A1*2', result: 2, shareType: 'shared', ref: 'B1:B2' };
      other.getCell('B2').value = { sharedFormula: 'B1', result: 4 };
    });
    expect(cells.map(cell => cell.formula).filter(Boolean)).toEqual(['=A1*2', '=A2*2']);
  });

  it('reads 5,000 rows of formulas within seconds', async () => {
    const started = Date.now();
    const { cells } = await cellsOf(other => {
      for (let row = 1; row <= 5000; row++) {
        other.addRow([
          1000 + row,
          40,
          45,
          { formula: `_xldudf_HOSE_CUTLENGTH(A${row},B${row},C${row})`, result: 915 + row, shareType: 'array', ref: `D${row}` },
        ]);
      }
    });
    expect(cells).toHaveLength(20_000);
    expect(Date.now() - started).toBeLessThan(10_000);
  });
});
