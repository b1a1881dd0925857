import ExcelJS from 'exceljs';
import { zipSync } from 'fflate';
import { mapHeadings } from '../../../src/sheets/parts/mapHeadings';
import { readCsv } from '../../../src/host/catalogueFile/readCsv';
import { readPartsFile } from '../../../src/host/catalogueFile/readPartsFile';
import { readWorkbookFile } from '../../../src/host/catalogueFile/readWorkbookFile';
import { Stopped } from '../../../src/workbook/watch';
import { zipBomb } from './zipBomb';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('.csv', () => {
  const expected = [
    ['Hose', 'Price'],
    ['Alder °', 12.5],
  ];
  test.each([
    ['comma', bytes('Hose,Price\nAlder °,12.5\n')],
    ['semicolon, decimal comma, byte order mark, CRLF', bytes('\ufeffHose;Price\r\nAlder °;12,5\r\n')],
    ['tab', bytes('Hose\tPrice\nAlder °\t12.5')],
    ['Windows-1252 (° is one byte, B0)', Uint8Array.from('Hose;Price\nAlder \u00b0;12,5', sign => sign.charCodeAt(0))],
    ['UTF-16 little endian', new Uint8Array(Buffer.from('\ufeffHose;Price\nAlder °;12,5', 'utf16le'))],
  ])('%s', async (_, file) => expect(await readCsv('hoses.csv', file)).toEqual(expected));

  test('a title with a comma and decimal commas do not part a file of semicolons', async () => {
    const text =
      'Crimps, invented\nHose;Dial;Target;Tol.;Spread\nAlder;212;19,8;0,15;0,3\nBirch;318;27,4;0,15;0,3\nCedar;1;2,5;0,15;0,3\n';
    expect((await readCsv('x.csv', bytes(text))).slice(0, 3)).toEqual([
      ['Crimps, invented'],
      ['Hose', 'Dial', 'Target', 'Tol.', 'Spread'],
      ['Alder', 212, 19.8, 0.15, 0.3],
    ]);
  });

  test('quoted cells keep delimiters and line ends; formulas, leading zeros, exponents and prototype names stay text', async () => {
    expect(await readCsv('x.csv', bytes('A,B,__proto__\n"a,\n""b""",007,=1+1\nconstructor,-3,1e3\n\n,,\n'))).toEqual([
      ['A', 'B', '__proto__'],
      ['a,\n"b"', '007', '=1+1'],
      ['constructor', -3, '1e3'],
    ]);
  });

  test.each([
    [
      'points of thousands in a file with decimal commas',
      'H;P;Q\na;2.000;6,4\nb;1.250,5;12',
      [
        [2000, 6.4],
        [1250.5, 12],
      ],
    ],
    [
      'decimal commas only in threes, parted by semicolons',
      'H;Bore (mm);Q\na;12,700;6\nb;9,525;5',
      [
        [12.7, 6],
        [9.525, 5],
      ],
    ],
    [
      'commas only in threes, parted by commas: left as text, to be asked about',
      'H,P,Q\na,"3,000",6\nb,"1,250",5',
      [
        ['3,000', 6],
        ['1,250', 5],
      ],
    ],
    [
      'commas of thousands in a file with decimal points',
      'H,P,Q\na,"3,000.5",0.375\nb,"1,250",.5',
      [
        [3000.5, 0.375],
        ['1,250', 0.5],
      ],
    ],
    ['both ways in threes: left as text where there is a comma', 'H;P;Price\na;1,250;2.000', [['1,250', 2]]],
  ])('%s', async (_, text, numbers) => {
    const [, ...rows] = await readCsv('x.csv', bytes(text));
    expect(rows.map(row => row.slice(1))).toEqual(numbers);
  });

  test('a quotation mark that is never closed is refused with its row', async () => {
    await expect(readCsv('x.csv', bytes('Hose,Note\nAlder,ok\nBirch,"1 inch\nCedar,ok\n'))).rejects.toThrow(
      'x.csv: a quotation mark in row 3 is never closed',
    );
  });

  test('a million rows, an empty file and a file of another kind are refused in a sentence', async () => {
    await expect(readCsv('big.csv', bytes('a,b\n'.repeat(1_000_000)))).rejects.toThrow(
      /^big.csv has more than 200000 rows: split it/,
    );
    await expect(readCsv('none.csv', bytes(' \n'))).rejects.toThrow('none.csv is empty');
    await expect(readCsv('wide.csv', bytes(','.repeat(500) + 'x'))).rejects.toThrow(/501 columns, more than 200/);
    await expect(readCsv('huge.csv', new Uint8Array(51 * 2 ** 20))).rejects.toThrow(/51 MB, more than 50/);
  });
});

describe('a long .csv', () => {
  const long = `Hose,Note,Dial\n${Array.from({ length: 60_000 }, (_, i) => `Alder ${i},"of ""two""\nlines ${i}",${i}`).join('\n')}`;

  test('is read in pieces without losing a row, and tells how far it is', async () => {
    const shares: (number | undefined)[] = [];
    const table = await readCsv('long.csv', bytes(long), { onProgress: share => shares.push(share) });
    expect(table).toHaveLength(60_001);
    for (const i of [0, 14_999, 30_000, 59_999]) expect(table[i + 1]).toEqual([`Alder ${i}`, `of "two"\nlines ${i}`, i]);
    expect(shares.length).toBeGreaterThan(5);
    expect([...shares].sort((a, b) => a! - b!)).toEqual(shares);
    expect(Math.max(...shares.map(share => share!))).toBeLessThanOrEqual(1);
  });

  test('stops when it is told to', async () => {
    const stop = new AbortController();
    let calls = 0;
    const onProgress = () => ++calls === 3 && stop.abort();
    await expect(readCsv('long.csv', bytes(long), { onProgress, signal: stop.signal })).rejects.toThrow(Stopped);
    expect(calls).toBe(3);
  });
});

test('blank rows within keep their place, so that rows are numbered as in the file', async () => {
  expect(await readCsv('x.csv', bytes('Hose,Bore\n,\nAlder,6\n,\n'))).toEqual([
    ['Hose', 'Bore'],
    [null, null],
    ['Alder', 6],
  ]);
});

describe('what a file is follows from its content', () => {
  test('an .xlsx that is called .csv, and a .csv that is called .xlsx', async () => {
    const workbook = new ExcelJS.Workbook();
    workbook.addWorksheet('Hoses').addRow(['Hose']);
    const archive = new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer);
    expect([...(await readPartsFile({ name: 'parts.csv', bytes: archive })).keys()]).toEqual(['Hoses']);
    expect((await readPartsFile({ name: 'parts.xlsx', bytes: bytes('Hose;Bore\nAlder;6') })).get('')?.table).toHaveLength(2);
  });

  test.each([
    ['old.xls', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1), /old \.xls workbook or has a password: save it as \.xlsx/],
    [
      'photo.jpg',
      Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 0, 16),
      /photo\.jpg is a picture: load an \.xlsx workbook or a \.csv table/,
    ],
    ['parts.csv', bytes('%PDF-1.4\n1 0 obj'), /parts\.csv is a PDF document/],
    ['download.csv', bytes('\ufeff\n<!DOCTYPE html>\n<p>Sign in, please</p>'), /download\.csv is a web page/],
    ['hoses.csv', bytes('[\n {"hose": "Alder", "bore": 6}]'), /hoses\.csv is a JSON file/],
    ['parts.dat', Uint8Array.of(0x41, 0x01, 0x02), /parts\.dat is neither an \.xlsx workbook nor a text file/],
  ])('%s is refused in a sentence', async (name, file, sentence) => {
    await expect(readPartsFile({ name, bytes: file })).rejects.toThrow(sentence);
  });
});

describe('.xlsx', () => {
  test('a sheet that is too wide for a table is told, the others are read', async () => {
    const workbook = new ExcelJS.Workbook();
    workbook.addWorksheet('Wide').addRow(Array.from({ length: 300 }, (_, i) => i));
    const hoses = workbook.addWorksheet('Hoses');
    hoses.addRow(['Hose']);
    hoses.getCell('GZ900').font = { bold: true };
    const sheets = await readWorkbookFile('p.xlsx', new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer));
    expect(sheets.get('Wide')?.reason).toMatch(/sheet Wide has 300 columns, more than 200/);
    expect(sheets.get('Hoses')?.table).toEqual([['Hose']]);
  });

  test('gives each sheet with plain values', async () => {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet('Hoses');
    sheet.addRow(['Hose', 'Bore (mm)', 'Date', 'Sum']);
    sheet.addRow(['__proto__', 12.7, new Date(Date.UTC(2024, 2, 5)), { formula: 'B2*2', result: 25.4 }]);
    sheet.addRow([{ richText: [{ text: 'Al' }, { text: 'der' }] }, { error: '#REF!' }]);
    const tables = await readWorkbookFile('parts.xlsx', new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer));
    expect(tables.get('Hoses')?.table).toEqual([
      ['Hose', 'Bore (mm)', 'Date', 'Sum'],
      ['__proto__', 12.7, 45_356, 25.4],
      ['Alder', { error: '#REF!' }, null, null],
    ]);
  });

  test('an archive that unpacks to far more than it weighs, and what is no archive, are refused', async () => {
    const bomb = zipBomb(160);
    expect(bomb.length).toBeLessThan(2 ** 20);
    await expect(readWorkbookFile('bomb.xlsx', bomb)).rejects.toThrow(
      'bomb.xlsx unpacks to more than 150 MB, so it was not opened',
    );
    await expect(readWorkbookFile('x.xlsx', bytes('no archive'))).rejects.toThrow(
      'x.xlsx is not an .xlsx file, or it is damaged',
    );
    await expect(readWorkbookFile('y.xlsx', zipSync({ 'a.txt': bytes('a') }))).rejects.toThrow('y.xlsx holds no sheet');
  });
});

test('headings are mapped by hand with the unit they had', () => {
  const table = [
    ['Schlauch', 'Family', 'Innen (mm)', 'Shelf'],
    ['Alder', 'Alder', 12.7, 3],
  ];
  const map = new Map([
    ['Schlauch', 'Hose'],
    ['Innen (mm)', 'Bore'],
  ]);
  expect(mapHeadings(table, map)[0]).toEqual(['Hose', 'Family', 'Bore (mm)', 'Shelf']);
});

describe('names in a .csv stay text', () => {
  const odd = ['1E5', '1.500', '12345678901234567890', '9'.repeat(400), '007', '3-4', '0x10', 'Infinity'];
  const read = async (heading: string, text = odd.join('\n'), delimiter = ',') => {
    const rows = text.split('\n').map(cell => `Alder${delimiter}${cell}`);
    const [, ...cells] = await readCsv('x.csv', bytes(`Family${delimiter}${heading}\n${rows.join('\n')}`));
    return cells.map(row => row[1]);
  };

  test.each(['Hose', 'FITTING', 'Part no.', 'Item number', 'Coupling', 'Die set', 'Size', 'Note'])(
    'under %s every one is as it was typed',
    async heading => expect(await read(heading)).toEqual(odd),
  );

  test('in the first column, whatever its heading', async () => {
    const table = await readCsv('x.csv', bytes(`Teil,Bore (mm)\n${odd.map(name => `${name},12.700`).join('\n')}`));
    expect(table.slice(1)).toEqual(odd.map(name => [name, 12.7]));
    const semicolons = await readCsv('x.csv', bytes('Teil;Preis\n12,50;2.000\n1.500;3,5'));
    expect(semicolons.slice(1)).toEqual([
      ['12,50', 2000],
      ['1.500', 3.5],
    ]);
  });

  test('under a heading that says nothing, whatever a number would write otherwise', async () => {
    expect(await read('Zeichnung', '1E5\n1.500\n2.50\n+4\n4711\n2.5\n-3')).toEqual(['1E5', '1.500', '2.50', '+4', 4711, 2.5, -3]);
  });

  test('in a file of decimal commas digits in threes stay as typed, unless their column has a decimal that can be no other', async () => {
    const rows = [
      'Hose;Bore (mm);Zeichnung;Gewicht;Bund',
      'Alder;12,7;1.250;0,5;1,250',
      'Birch;1.250;4711;1.250;3-4',
      'Elm;9,5;x;1,250;2',
    ];
    const [, ...read] = await readCsv('x.csv', bytes(rows.join('\n')));
    expect(read).toEqual([
      ['Alder', 12.7, '1.250', 0.5, '1,250'],
      ['Birch', 1250, 4711, 1250, '3-4'],
      ['Elm', 9.5, 'x', 1.25, 2],
    ]);
  });

  test('under a heading of numbers they are numbers, but none that loses a digit', async () => {
    for (const heading of ['Bore (mm)', 'ID (mm)', 'WP (psi)', 'Price', 'Dial']) {
      expect(await read(heading, '1E5\n1.500\n0.375\n12345678901234567890\n0.1234567890123456')).toEqual([
        100_000,
        1.5,
        0.375,
        '12345678901234567890',
        '0.1234567890123456',
      ]);
      expect(await read(heading, '9'.repeat(400))).toEqual(['9'.repeat(400)]);
      expect(await read(heading, '1e400')).toEqual(['1e400']);
    }
  });

  test('a title above the headings changes nothing', async () => {
    const table = await readCsv('x.csv', bytes('Hoses of 2026,\nFamily,Hose\nAlder,1E5\n'));
    expect(table[2]).toEqual(['Alder', '1E5']);
  });
});
