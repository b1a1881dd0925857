import { IUniverInstanceService } from '@univerjs/core';
import { Workbook } from 'exceljs';
import { strFromU8, unzipSync } from 'fflate';
import { savedWorkbook } from '../../src/preview/host/savedWorkbook';
import { writeXlsx } from '../../src/preview/xlsx/writeXlsx';
import { hostFunctions } from '../../src/preview/host/hostFunctions';
import { headlessWorkbook, type HeadlessWorkbook } from '../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../src/preview/headless/loadScript';
import { UniverWorkbook } from '../../src/preview/univerWorkbook';
import { readXlsx } from '../../src/preview/xlsx/readXlsx';
import { eventually } from '../eventually';
import { builtFunctions } from './builtFunctions';
import { stored, workshopFile } from './workshopFile';

const functions = builtFunctions();
let open: HeadlessWorkbook;
let port: UniverWorkbook;

const at = (address: string, sheet = 'Jobs') => ({ sheet, address });
/** Long enough for an event that must not come; what must come is waited for. */
const silence = () => new Promise(resolve => setTimeout(resolve, 300));
const cellsIn = async (address: string) => (await port.read([at(address)]))[0]!.values;

beforeEach(async () => {
  const { data } = await readXlsx(await workshopFile());
  open = headlessWorkbook(data, hostFunctions(functions.metadata, loadScript(functions.script)));
  // Undo works on the workbook that has the focus; on the page a click gives it.
  open.univer.__getInjector().get(IUniverInstanceService).focusUnit(data.id);
  port = new UniverWorkbook(open.univer, open.api);
  await open.calculate();
});
afterEach(() => open.dispose());

describe('reading through the port', () => {
  it('gives values, formulas and formats of a range, errors with their sentence', async () => {
    const [range] = await port.read([at('D2:E2')]);
    expect(range).toEqual({
      sheet: 'Jobs',
      address: 'D2:E2',
      row: 1,
      column: 3,
      values: [[14.62, 46_351]],
      formulas: [['=HOSE.CUTLENGTH(A2,B2,C2)', '']],
      formats: [['0.00', 'dd/mm/yyyy']],
    });
    const [spill] = await port.read([at('D4:D5')]);
    expect(spill!.values).toEqual([[18], [{ error: '#VALUE!', sentence: expect.stringContaining('"twenty"') }]]);
  });

  it('clips whole columns and huge ranges to the used part, and gives at least one cell', async () => {
    expect((await port.read([at('A:A'), at('A1:F1000000'), at('Z900')])).map(range => range.address)).toEqual([
      'A1:A8',
      'A1:F8',
      'Z900',
    ]);
  });

  it('gives the used part of a sheet, its names, and the cell that fills another', async () => {
    expect((await port.used('Jobs'))!.address).toBe('A1:F8');
    expect(await port.names()).toEqual([{ name: 'Overalls', at: at('A4:A5') }]);
    expect(await port.spillParent(at('D5'))).toEqual(at('D4'));
    expect(await port.spillParent(at('D4'))).toBeUndefined();
    expect(await port.sheets()).toEqual(['Jobs']);
    expect(await port.tables('Jobs')).toEqual([]);
  });

  it('tells what is hidden of the used part and merged cells, and follows when something is hidden or shown', async () => {
    const merges = [{ row: 7, column: 0, rows: 1, columns: 3 }];
    const nothing = { hiddenRows: new Set(), hiddenColumns: new Set(), isHidden: false };
    expect(await port.layout('Jobs')).toEqual({ ...nothing, merges });
    const sheet = open.api.getActiveWorkbook()!.getActiveSheet();
    sheet.hideRows(2, 2);
    sheet.hideRows(50, 1);
    sheet.hideColumns(4, 9);
    expect(await port.layout('Jobs')).toEqual({
      ...nothing,
      hiddenRows: new Set([2, 3]),
      hiddenColumns: new Set([4, 5]),
      merges,
    });
    sheet.hideColumns(0, 26);
    expect((await port.layout('Jobs')).hiddenRows).toEqual(new Set([2, 3]));
    sheet.showRows(3, 1);
    expect((await port.layout('Jobs')).hiddenRows).toEqual(new Set([2]));
    await port.write([{ kind: 'addSheet', sheet: 'Blank' }]);
    expect(await port.layout('Blank')).toEqual({ ...nothing, merges: [] });
    open.api.getActiveWorkbook()!.getSheetByName('Blank')!.hideSheet();
    expect((await port.layout('Blank')).isHidden).toBe(true);
    await expect(port.layout('Nowhere')).rejects.toThrow('there is no sheet Nowhere');
  });

  it('remembers texts with the workbook, and undo leaves them alone', async () => {
    expect(await port.recall('unit.Jobs')).toBeUndefined();
    await port.write([{ kind: 'values', at: at('A2'), values: [[99]] }]);
    await port.remember('unit.Jobs', 'mm');
    await port.remember('unit.Rack', 'in');
    await port.remember('unit.Rack', undefined);
    await open.api.undo();
    expect([await port.recall('unit.Jobs'), await port.recall('unit.Rack')]).toEqual(['mm', undefined]);
  });

  it('refuses sheets and ranges that do not exist', async () => {
    await expect(port.read([at('A1', 'Nowhere')])).rejects.toThrow('there is no sheet Nowhere');
    await expect(port.read([at('A1:')])).rejects.toThrow('is no range');
  });
});

describe('writing through the port', () => {
  it('makes dependents follow', async () => {
    await port.write([{ kind: 'values', at: at('A2'), values: [[20.5]] }]);
    await eventually(async () => expect(await cellsIn('D2:F2')).toEqual([[18.62, 46_351, 37.24]]));
  });

  it('keeps texts as they are; the formula bar marks only what would become something else when it is entered again', async () => {
    const plain = ['Quote', 'Cut-off (mm)', 'Alder DN 25', '24° cone', '3 x 1250', 'week 41', '– none', '1 1/2', '4\' 3 1/2"'];
    const marked = ['=1+1', '+4', '-see', '@home', "'so'", '20.5', '007', '3/8', '5%', '2026-11-25', '12:30', 'TRUE', '#N/A'];
    const texts = [...plain, ...marked];
    await port.write([{ kind: 'values', at: at(`H1:H${texts.length}`), values: texts.map(text => [text]) }]);
    expect((await cellsIn(`H1:H${texts.length}`)).flat()).toEqual(texts);
    const sheet = open.api.getActiveWorkbook()!.getActiveSheet().getSheet();
    const inBar = texts.map((_, row) => {
      const { documentModel } = sheet.getCellDocumentModelWithFormula(sheet.getCellRaw(row, 7)!, row, 7)!;
      return documentModel!.getBody()!.dataStream.trimEnd();
    });
    expect(inBar).toEqual([...plain, ...marked.map(text => `'${text}`)]);
    const file = new Workbook();
    await file.xlsx.load(Buffer.from(await writeXlsx(savedWorkbook(open.univer, open.api))) as never);
    expect(texts.map((_, row) => file.getWorksheet('Jobs')!.getCell(row + 1, 8).value)).toEqual(texts);
  });

  it('makes a grid longer and wider for what is written: nothing is selected by that, and widths stay with their columns', async () => {
    const wide = Array.from({ length: 30 }, (_, index) => index);
    await port.select(at('B2'));
    await port.write([
      { kind: 'addSheet', sheet: 'Log' },
      { kind: 'style', at: at('AC1', 'Log'), style: { columnWidth: 90 } },
      { kind: 'values', at: at('A1:AD1', 'Log'), values: [wide] },
      { kind: 'values', at: at('AZ1500'), values: [['far']] },
    ]);
    expect(await port.selection()).toMatchObject(at('B2'));
    expect((await port.used('Log'))!.values).toEqual([wide]);
    expect(await cellsIn('AZ1500')).toEqual([['far']]);
    const book = open.api.getActiveWorkbook()!;
    expect(book.getSheetByName('Log')!.getColumnWidth(28)).toBe(120);
    await port.select(at('A1', 'Log'));
    expect(await port.selection()).toMatchObject(at('A1', 'Log'));
    await open.api.undo();
    await eventually(async () => expect([await port.sheets(), await cellsIn('AZ1500')]).toEqual([['Jobs'], [['']]]));
    await open.api.redo();
    await eventually(async () => expect(await cellsIn('AZ1500')).toEqual([['far']]));
  });

  it('sets columns to a width each, leaves those between them as they are, and undo sets all back', async () => {
    const widths = () =>
      ['A', 'B', 'C', 'D', 'E'].map((_, column) => open.api.getActiveWorkbook()!.getSheetByName('Jobs')!.getColumnWidth(column));
    const before = widths();
    await port.write([
      { kind: 'style', at: at('A1'), style: { columnWidth: 60 } },
      { kind: 'style', at: at('B1:C1'), style: { bold: true } },
      { kind: 'style', at: at('D1:E9'), style: { columnWidth: 90 } },
      { kind: 'style', at: at('E1'), style: { columnWidth: 30 } },
    ]);
    expect(widths()).toEqual([80, before[1], before[2], 120, 40]);
    await open.api.undo();
    await eventually(async () => expect(widths()).toEqual(before));
    await open.api.redo();
    await eventually(async () => expect(widths()).toEqual([80, before[1], before[2], 120, 40]));
  });

  it('writes several changes as one undo step', async () => {
    await port.write([
      { kind: 'addSheet', sheet: 'Crimps' },
      {
        kind: 'values',
        at: at('A1:B2', 'Crimps'),
        values: [
          ['Part', '007'],
          [true, 3.5],
        ],
      },
      { kind: 'formulas', at: at('C2', 'Crimps'), formulas: [['=HOSE.CUTLENGTH(B2,1,1)']] },
      { kind: 'format', at: at('C2', 'Crimps'), numberFormat: '0.000' },
      { kind: 'style', at: at('A1:B1', 'Crimps'), style: { bold: true, fill: '#DDEBF7', columnWidth: 60 } },
      { kind: 'name', name: 'Parts', refersTo: at('A1:B2', 'Crimps') },
      { kind: 'values', at: at('A2'), values: [[99]] },
    ]);
    await eventually(async () =>
      expect(await port.used('Crimps')).toMatchObject({
        values: [
          ['Part', '007', ''],
          [true, 3.5, 1.5],
        ],
        formats: [
          ['General', 'General', 'General'],
          ['General', 'General', '0.000'],
        ],
      }),
    );
    expect(await port.names()).toContainEqual({ name: 'Parts', at: at('A1:B2', 'Crimps') });
    await open.api.undo();
    await eventually(async () => expect(await port.sheets()).toEqual(['Jobs']));
    expect(await cellsIn('A2')).toEqual([[16.5]]);
    expect(await port.names()).toEqual([{ name: 'Overalls', at: at('A4:A5') }]);
  });

  it('takes a sheet away that was added, and undo brings it back', async () => {
    await port.write([
      { kind: 'addSheet', sheet: 'Half' },
      { kind: 'values', at: at('A1', 'Half'), values: [['x']] },
    ]);
    await port.write([{ kind: 'removeSheet', sheet: 'Half' }]);
    expect(await port.sheets()).not.toContain('Half');
    await expect(port.write([{ kind: 'removeSheet', sheet: 'Half' }])).rejects.toThrow('there is no sheet Half');
    await open.api.undo();
    expect(await port.sheets()).toContain('Half');
  });

  it('writes looks and printing that a saved file keeps', async () => {
    await port.write([
      { kind: 'style', at: at('A2:B2'), style: { fontSize: 14, border: 'all', rowHeight: 30, wrap: true, color: '#8F1D1D' } },
      {
        kind: 'page',
        sheet: 'Jobs',
        page: { orientation: 'landscape', titleRows: '1:1', titleColumns: 'A:A', fitWidth: true, breaksBefore: [5] },
      },
    ]);
    const bytes = await writeXlsx(savedWorkbook(open.univer, open.api));
    const file = new Workbook();
    await file.xlsx.load(bytes.slice().buffer as ArrayBuffer);
    const jobs = file.getWorksheet('Jobs')!;
    expect(jobs.getCell('B2')).toMatchObject({
      value: 0.94,
      font: { size: 14 },
      alignment: { wrapText: true },
      border: { left: { style: 'thin' } },
    });
    expect(jobs.getRow(2).height).toBe(30);
    expect(jobs.pageSetup).toMatchObject({
      orientation: 'landscape',
      printTitlesRow: '1:1',
      printTitlesColumn: 'A:A',
      fitToWidth: 1,
    });
    // A break before row 5 stands in the file as one after row 4; the library writes breaks and does not read them.
    expect(strFromU8(unzipSync(bytes)['xl/worksheets/sheet1.xml']!)).toMatch(/<rowBreaks[^>]*><brk id="4"/);
  });

  it('has no charts: one is left out, what comes with it is written; one without a sheet is refused', async () => {
    const chart = { title: 'Overalls', series: [{ name: 'Overall', x: 'A2:A3', y: 'A2:A3', looks: 'points' }] } as const;
    await port.write([
      { kind: 'chart', at: at('H1:M12'), chart },
      { kind: 'values', at: at('G1'), values: [['beside']] },
    ]);
    expect((await port.read([at('G1')]))[0]!.values).toEqual([['beside']]);
    await expect(port.write([{ kind: 'chart', at: at('A1:B2', 'Nowhere'), chart }])).rejects.toThrow('there is no sheet Nowhere');
  });

  it('adds a name that a sheet has too, and formulas can call it', async () => {
    await port.write([
      { kind: 'name', name: 'Jobs', refersTo: at('A2') },
      { kind: 'formulas', at: at('H2'), formulas: [['=Jobs*2']] },
    ]);
    await eventually(async () => expect(await cellsIn('H2')).toEqual([[33]]));
    expect(await port.names()).toContainEqual({ name: 'Jobs', at: at('A2') });
  });

  it('moves a name that exists', async () => {
    await port.write([{ kind: 'name', name: 'Overalls', refersTo: at('A2') }]);
    expect(await port.names()).toEqual([{ name: 'Overalls', at: at('A2') }]);
  });

  it.each([
    [
      'a sheet that does not exist',
      { kind: 'values' as const, at: at('A1', 'Nowhere'), values: [[1]] },
      'there is no sheet Nowhere',
    ],
    ['a table of another size', { kind: 'values' as const, at: at('A1:B1'), values: [[1]] }, 'is not 1 × 2 cells'],
    ['a sheet that is there already', { kind: 'addSheet' as const, sheet: 'Jobs' }, 'already a sheet Jobs'],
  ])('writes nothing where one change does not fit: %s', async (_, wrong, sentence) => {
    await expect(port.write([{ kind: 'values', at: at('A2'), values: [[99]] }, wrong])).rejects.toThrow(sentence);
    expect((await port.read([at('A2')]))[0]!.values).toEqual([[16.5]]);
  });

  it('blanks cells, and finds nothing to re-enter where every function is known', async () => {
    await port.write([{ kind: 'values', at: at('A2'), values: [['']] }]);
    await eventually(async () => expect([await cellsIn('A2'), await cellsIn('D2')]).toEqual([[['']], [['']]]));
    expect(await port.reenterUnknownNames()).toBe(0);
  });
});

it('tells of selections and of changed content, until told to stop', async () => {
  const listener = jest.fn();
  const stop = port.onSelection(listener);
  await port.select(at('D2'));
  await eventually(async () => expect(listener).toHaveBeenCalledTimes(1));
  expect(await port.selection()).toMatchObject({ address: 'D2', values: [[14.62]] });
  stop();
  await port.select(at('D4'));
  await silence();
  expect(listener).toHaveBeenCalledTimes(1);
});

it('re-enters formulas of ours that show #NAME?', async () => {
  const { data } = await readXlsx(
    await workshopFile(
      workbook =>
        (workbook.getWorksheet('Jobs')!.getCell('D2').value = stored(
          '_xldudf_HOSE_CUTLENGTH(A2,B2,C2)',
          { error: '#NAME?' },
          'D2',
        )),
    ),
  );
  open.dispose();
  open = headlessWorkbook(data, hostFunctions(functions.metadata, loadScript(functions.script)));
  port = new UniverWorkbook(open.univer, open.api);
  expect(await port.reenterUnknownNames()).toBe(1);
  await eventually(async () => expect(await cellsIn('D2')).toEqual([[14.62]]));
});
