import { strToU8, unzipSync, zipSync } from 'fflate';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { UnreadableFile } from '../../../src/preview/xlsx/unreadableFile';
import { workshopFile } from '../workshopFile';
import { processorTime } from '../../processorTime';

/** Start of a compound file and a directory entry of that name, in UTF-16. */
function compoundFile(stream: string): Uint8Array {
  const bytes = new Uint8Array(1024);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  bytes.set(Buffer.from(stream, 'utf16le'), 512);
  return bytes;
}

describe('files that cannot be opened', () => {
  const cut = async () => (await workshopFile()).slice(0, 3000);
  const farCell = () => workshopFile(workbook => (workbook.getWorksheet('Jobs')!.getCell('A150000').value = 1));

  it.each([
    ['an empty file', async () => new Uint8Array(), 'jobs.xlsx is empty.'],
    ['text', async () => strToU8('overall;cut-off'), 'is not an .xlsx workbook'],
    // MS-CFB 2.2: how a compound file starts; MS-OFFCRYPTO 2.3.4.4: the stream of an encrypted workbook.
    ['an old workbook', async () => compoundFile('Workbook'), 'jobs.xlsx is an old .xls workbook. Save it as .xlsx'],
    ['a protected workbook', async () => compoundFile('EncryptedPackage'), 'jobs.xlsx is protected by a password'],
    ['a file cut short', cut, 'could not be read: it is damaged'],
    ['some other zip file', async () => zipSync({ 'readme.txt': strToU8('hello') }), /could not be read|holds no worksheet/],
    ['a sheet with 150,000 rows', farCell, 'sheet Jobs has 150,000 rows'],
  ])('%s: a sentence says what is wrong and what to do', async (_, file, sentence) => {
    const reading = readXlsx(await file(), 'jobs.xlsx');
    await expect(reading).rejects.toThrow(UnreadableFile);
    await expect(reading).rejects.toThrow(sentence);
  });
});

it('a text file is told as such, and where tables of parts go', async () => {
  await expect(readXlsx(strToU8('overall;cut-off'), 'jobs.CSV')).rejects.toThrow('jobs.CSV is a text file. Open it in your');
});

describe('what the page does not show is said when a file is opened', () => {
  const notesOf = async (change: Parameters<typeof workshopFile>[0], parts: Record<string, string> = {}) => {
    const file = unzipSync(await workshopFile(change));
    return (await readXlsx(zipSync({ ...file, ...mapValues(parts, strToU8) }))).notes;
  };
  const mapValues = <T, U>(record: Record<string, T>, change: (value: T) => U) =>
    Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));

  it('says nothing of a file that is shown whole', async () => expect(await notesOf(() => {})).toEqual([]));

  it('counts what would be lost in a saved file', async () => {
    const notes = await notesOf(
      workbook => {
        const other = workbook.addWorksheet('Other');
        other.addTable({ name: 'Reels', ref: 'A1', columns: [{ name: 'Hose' }], rows: [['Alder DN 25']] });
        other.getCell('D1').note = 'invented';
        const picture = workbook.addImage({ base64: 'iVBORw0KGgo=', extension: 'png' });
        other.addImage(picture, 'E1:F2');
      },
      { 'xl/charts/chart1.xml': '<c/>', 'xl/charts/chart2.xml': '<c/>', 'xl/charts/style1.xml': '<c/>' },
    );
    expect(notes).toEqual([
      'Not shown here, and lost in a file saved from here: 2 charts, 1 Excel table, 1 picture and the notes or comments of a sheet. Keep the original.',
    ]);
  });

  it('says nothing of conditional formats that it draws, and how many rules it does not draw', async () => {
    const rule = { type: 'cellIs', operator: 'equal', formulae: ['"TIGHT"'], priority: 1, style: { font: { bold: true } } };
    const cfvo = [0, 33, 67].map(value => ({ type: 'percent', value }));
    const icons = { type: 'iconSet', iconSet: '3TrafficLights', cfvo, priority: 2 };
    const add =
      (...rules: object[]) =>
      (workbook: Parameters<NonNullable<Parameters<typeof workshopFile>[0]>>[0]) =>
        workbook.getWorksheet('Jobs')!.addConditionalFormatting({ ref: 'D2:D9', rules: rules as never });
    expect(await notesOf(add(rule))).toEqual([]);
    expect(await notesOf(add(rule, icons))).toEqual([
      'Conditional formats of a kind that is not drawn here are kept for the file: 1, such as icon sets.',
    ]);
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
    const spent = processorTime();
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
    expect(spent()).toBeLessThan(10_000);
  });
});
