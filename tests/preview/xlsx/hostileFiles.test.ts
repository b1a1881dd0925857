import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { readWorkbookFile } from '../../../src/host/catalogueFile/readWorkbookFile';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { UnreadableFile } from '../../../src/preview/xlsx/unreadableFile';
import { workshopFile } from '../workshopFile';
import { processorTime } from '../../processorTime';

/** Far less than a person waits, far more than a small file takes on a busy machine. */
const BOUND = 6_000;

const SHEET = 'xl/worksheets/sheet1.xml';
type Edit = (xml: string) => string;

/** The small workbook with one of its parts edited, as a person with a text editor can. */
async function edited(part: string, edit: Edit): Promise<Uint8Array> {
  const parts = unzipSync(await workshopFile());
  const before = strFromU8(parts[part]!);
  const after = edit(before);
  if (after === before) throw new Error('the edit changed nothing');
  return zipSync({ ...parts, [part]: strToU8(after) });
}

const before =
  (mark: string, added: string): Edit =>
  xml =>
    xml.replace(mark, added + mark);
const merge = (ref: string) => before('</mergeCells>', `<mergeCell ${ref}/>`);
const rule = (sqref: string) =>
  before(
    '<pageMargins',
    `<dataValidations><dataValidation type="whole" ${sqref}><formula1>1</formula1></dataValidation></dataValidations>`,
  );
const name = (content: string) => before('</definedNames>', `<definedName name="Everything">${content}</definedName>`);
const column = (range: string) => (xml: string) => xml.replace(/<cols>.*<\/cols>/, `<cols><col ${range} width="12"/></cols>`);
const formula = (ref: string, count = 1): Edit =>
  before(
    '</sheetData>',
    Array.from(
      { length: count },
      (_, i) => `<row r="${50 + i}"><c r="A${50 + i}"><f t="array" ref="${ref}">1+1</f><v>2</v></c></row>`,
    ).join(''),
  );
const WHOLE = 'A1:XFD1048576';

async function timed<T>(work: () => Promise<T>): Promise<T> {
  const spent = processorTime();
  const result = await work();
  expect(spent()).toBeLessThan(BOUND);
  return result;
}

describe('a small file that claims whole sheets opens at once, and what is left out is said', () => {
  test.each<[string, string, Edit, string]>([
    ['a merged block', SHEET, merge(`ref="B10:XFD1048576"`), 'merged blocks'],
    ['a merged block beyond the last row', SHEET, merge('ref="B10:B99999999"'), 'merged blocks'],
    ['a merged block in disguise', SHEET, merge('ref="B10&#58;XFD1048576"'), 'merged blocks'],
    ['a merged block behind a false mark', SHEET, merge(`id=" > ref='B10:B11'" ref="B10:XFD1048576"`), 'merged blocks'],
    [
      '20,000 merged blocks',
      SHEET,
      before('</mergeCells>', Array.from({ length: 20_000 }, (_, i) => `<mergeCell ref="E${i + 10}:F${i + 10}"/>`).join('')),
      'merged blocks',
    ],
    ['a rule for entries', SHEET, rule(`sqref="${WHOLE}"`), 'rules for entries'],
    ['a rule for entries, in several pieces', SHEET, rule(`sqref="A1 B1:B99999999&#10;C1:XFD1048576"`), 'rules for entries'],
    ['a rule for entries behind a false mark', SHEET, rule(`prompt=' sqref="A1"' sqref="${WHOLE}"`), 'rules for entries'],
    ['a name', 'xl/workbook.xml', name('Jobs!$A$1:$XFD$1048576'), 'names'],
    ['a name of many blocks', 'xl/workbook.xml', name(Array(300).fill('Jobs!$A$1:$A$1000').join(',')), 'names'],
    ['columns beyond the last', SHEET, column('min="1" max="2000000000"'), 'column widths'],
  ])('%s', async (_, part, edit, said) => {
    const file = await edited(part, edit);
    const { notes, cells } = await timed(() => readXlsx(file));
    expect(notes[0]).toBe(
      `Too large for this page, and left out or shortened here and in a file saved from here: ${said}. Keep the original.`,
    );
    expect(cells.find(cell => cell.address === 'D2')).toMatchObject({ cached: 14.62 });
    const sheets = await timed(() => readWorkbookFile('parts.xlsx', file));
    expect([...sheets.keys()]).toEqual(['Jobs']);
  });

  test.each<[string, string, Edit]>([
    ['every column with a width', SHEET, column('min="1" max="16384"')],
    ['a name beyond the last row', 'xl/workbook.xml', name('Jobs!$A$1:$A$99999999')],
    ['a name in disguise', 'xl/workbook.xml', name('Jobs!$A$1&#58;$XFD$1048576')],
    ['a formula that claims to fill everything', SHEET, formula(WHOLE)],
    ['2,000 formulas that claim to fill everything', SHEET, formula(WHOLE, 2000)],
    ['panes frozen far below', SHEET, xml => xml.replace(/ySplit="1"/, 'ySplit="1000000"')],
  ])('%s', async (_, part, edit) => {
    const file = await edited(part, edit);
    const { cells } = await timed(() => readXlsx(file));
    expect(cells.find(cell => cell.address === 'A2')).toMatchObject({ cached: 16.5 });
  });

  test.each<[string, string, Edit]>([
    ['a comment within a name', 'xl/workbook.xml', name('Jobs!$A$1:<!-- -->$XFD$1048576')],
    ['a cell in row 1,048,576', SHEET, before('</sheetData>', '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>')],
    ['a cell in row 4,000,000,000', SHEET, before('</sheetData>', '<row r="4000000000"><c r="A4000000000"><v>1</v></c></row>')],
    ['a cell in column ZZZZZZ', SHEET, before('</sheetData>', '<row r="60"><c r="ZZZZZZ60"><v>1</v></c></row>')],
  ])('%s: refused with a sentence', async (_, part, edit) => {
    const file = await edited(part, edit);
    await timed(() => expect(readXlsx(file)).rejects.toThrow(UnreadableFile));
  });
});

test('a file that unpacks to more than 150 MB is refused before it is unpacked', async () => {
  const parts = unzipSync(await workshopFile());
  const file = zipSync({ ...parts, 'xl/media/image1.png': new Uint8Array(160 * 2 ** 20) }, { level: 1 });
  expect(file.length).toBeLessThan(2_000_000);
  await timed(() =>
    expect(readXlsx(file, 'bomb.xlsx')).rejects.toThrow('bomb.xlsx unpacks to more than 150 MB, so it was not opened.'),
  );
});

test('a rule down to the end of its column is kept for the rows in use and a thousand more', async () => {
  const file = await edited(SHEET, rule('sqref="E2:E1048576"'));
  const { data, notes } = await readXlsx(file);
  const { validations } = data.sheets[data.sheetOrder[0]!]!.custom as { validations: Record<string, unknown> };
  expect(Object.keys(validations).slice(-1)).toEqual(['E1008']);
  expect(notes[0]).toContain('shortened');
});
