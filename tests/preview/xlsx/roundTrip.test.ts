import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { savedWorkbook } from '../../../src/preview/host/savedWorkbook';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { writeXlsx } from '../../../src/preview/xlsx/writeXlsx';
import { builtFunctions } from '../builtFunctions';
import { workshopFile } from '../workshopFile';

const functions = builtFunctions();

/** Opens a file, calculates it, does something with it, and saves it again. */
async function savedAgain(file: Uint8Array, work: (port: UniverWorkbook) => Promise<void> = async () => {}): Promise<Uint8Array> {
  const { data, cells } = await readXlsx(file);
  const workbook = headlessWorkbook(data, hostFunctions(functions.metadata, loadScript(functions.script)));
  await workbook.calculate();
  await work(new UniverWorkbook(workbook.univer, workbook.api));
  const saved = await writeXlsx(savedWorkbook(workbook.univer, workbook.api, cells));
  workbook.dispose();
  return saved;
}

/** A file with one part changed, as another program could have written it. */
function withPart(file: Uint8Array, name: string, change: (xml: string) => string): Uint8Array {
  const parts = unzipSync(file);
  return zipSync({ ...parts, [name]: strToU8(change(strFromU8(parts[name]!))) });
}

describe('a workbook that is opened and saved as .xlsx', () => {
  it('keeps every cell: values, formulas, spills, errors', async () => {
    const file = await workshopFile();
    expect((await readXlsx(await savedAgain(file))).cells).toEqual((await readXlsx(file)).cells);
  });

  it('keeps styles, formats, widths, merges, frozen panes, grid lines and names', async () => {
    const file = await workshopFile();
    const before = (await readXlsx(file)).data;
    const after = (await readXlsx(await savedAgain(file))).data;
    const sheet = (data: typeof before) => data.sheets[data.sheetOrder[0]!]!;
    const look = (data: typeof before, row: number, column: number) =>
      data.styles[sheet(data).cellData![row]![column]!.s as string];
    expect(look(after, 0, 0)).toEqual(look(before, 0, 0));
    expect(look(after, 0, 0)).toMatchObject({
      bl: 1,
      ht: 2,
      tb: 3,
      bg: { rgb: '#DDEBF7' },
      bd: { b: { s: 1, cl: { rgb: '#336699' } } },
    });
    expect(look(after, 1, 4)).toEqual({ n: { pattern: 'dd/mm/yyyy' }, ...look(before, 1, 4) });
    for (const key of ['mergeData', 'freeze', 'showGridlines', 'name'] as const)
      expect(sheet(after)[key]).toEqual(sheet(before)[key]);
    expect(sheet(after).columnData![0]).toMatchObject({ w: 140 });
    expect(after.resources).toEqual(before.resources);
  });

  it('keeps the width of columns and the height of rows that nobody has set one by one', async () => {
    const file = await workshopFile(workbook => {
      Object.assign(workbook.getWorksheet('Jobs')!.properties, { defaultColWidth: 14, defaultRowHeight: 24 });
    });
    const before = (await readXlsx(file)).data.sheets.sheet1!;
    // 14 digits of 7 pixels, those beside the text among them (ECMA-376 part 1, 18.3.1.81); 24 points of 4/3 pixels.
    expect([before.defaultColumnWidth, before.defaultRowHeight]).toEqual([98, 32]);
    const parts = unzipSync(await savedAgain(file));
    expect(strFromU8(parts['xl/worksheets/sheet1.xml']!)).toMatch(
      /<sheetFormatPr [^>]*defaultRowHeight="24"[^>]* defaultColWidth="14"/,
    );
    const after = (await readXlsx(await savedAgain(file))).data.sheets.sheet1!;
    expect([after.defaultColumnWidth, after.defaultRowHeight]).toEqual([98, 32]);
  });

  it('keeps the width of 64 pixels that Excel 365 itself stores for a column of 8.43 letters as 9.140625', async () => {
    const file = await workshopFile(workbook => void (workbook.getWorksheet('Jobs')!.getColumn(3).width = 9.140625));
    expect((await readXlsx(file)).data.sheets.sheet1!.columnData![2]).toMatchObject({ w: 64 });
    const sheet = strFromU8(unzipSync(await savedAgain(file))['xl/worksheets/sheet1.xml']!);
    expect(sheet).toMatch(/<col min="3" max="3" width="9\.14\d*"/);
  });

  it('lets rows grow with wrapped text, and names the font wherever it says something about it', async () => {
    const file = await workshopFile(workbook => {
      workbook.getWorksheet('Jobs')!.properties.defaultRowHeight = 18;
      workbook.getWorksheet('Jobs')!.getCell('C4').font = { bold: true };
    });
    const parts = unzipSync(await savedAgain(file));
    expect(strFromU8(parts['xl/worksheets/sheet1.xml']!)).toMatch(
      /<sheetFormatPr (?![^>]*customHeight)[^>]*defaultRowHeight="18"/,
    );
    const fonts = strFromU8(parts['xl/styles.xml']!).match(/<font>.*?<\/font>/g)!;
    expect(fonts.filter(font => !/<sz val="\d+"\/>/.test(font) || !/<name val="[^"]+"\/>/.test(font))).toEqual([]);
  });

  it.each([
    ['A1:L30', '&apos;Smith&apos;&apos;s jobs&apos;!$A$1:$L$30'],
    ['A:F', '&apos;Smith&apos;&apos;s jobs&apos;!$A:$F'],
  ])('keeps the print area %s fixed, on a sheet with an apostrophe in its name', async (printArea, stored) => {
    const unnamed = await workshopFile(workbook => {
      Object.assign(workbook.getWorksheet('Jobs')!.pageSetup, { printArea, printTitlesRow: '1:1' });
    });
    const file = withPart(unnamed, 'xl/workbook.xml', xml =>
      xml
        .replace('name="Jobs"', 'name="Smith&apos;s jobs"')
        .replace(/(?:&apos;Jobs&apos;|Jobs)!/g, '&apos;Smith&apos;&apos;s jobs&apos;!'),
    );
    const names = strFromU8(unzipSync(await savedAgain(file))['xl/workbook.xml']!);
    expect(names).toContain(`<definedName name="_xlnm.Print_Area" localSheetId="0">${stored}</definedName>`);
    expect(names).toContain(
      '<definedName name="_xlnm.Print_Titles" localSheetId="0">&apos;Smith&apos;&apos;s jobs&apos;!$1:$1</definedName>',
    );
    expect((await readXlsx(await savedAgain(file))).data.sheets.sheet1!.custom).toMatchObject({ page: { printArea } });
  });

  it('keeps what the page does not show: conditional formats, rules for typing, printing', async () => {
    const rule = {
      type: 'cellIs' as const,
      operator: 'equal' as const,
      formulae: ['"TIGHT"'],
      priority: 1,
      style: { font: { bold: true } },
    };
    const file = await workshopFile(workbook => {
      const jobs = workbook.getWorksheet('Jobs')!;
      jobs.addConditionalFormatting({ ref: 'D2:D9', rules: [rule as never] });
      jobs.getCell('B2').dataValidation = { type: 'decimal', operator: 'greaterThan', formulae: [0] };
      Object.assign(jobs.pageSetup, {
        orientation: 'landscape',
        printTitlesRow: '1:1',
        printTitlesColumn: 'A:B',
        fitToPage: true,
        fitToWidth: 1,
        fitToHeight: 0,
      });
    });
    const before = (await readXlsx(file)).data.sheets.sheet1!.custom!;
    expect(before).toMatchObject({
      conditionalFormats: [{ ref: 'D2:D9' }],
      validations: { B2: { type: 'decimal' } },
      page: { orientation: 'landscape', titleRows: '1:1', titleColumns: 'A:B', fitWidth: true },
    });
    expect((await readXlsx(await savedAgain(file))).data.sheets.sheet1!.custom).toEqual(before);
  });

  it('keeps hidden rows, also those a filter has hidden and those without a cell, and the height of blank ones', async () => {
    // ECMA-376 part 1, 18.3.1.73: a row that a filter leaves out is `hidden`, as one that was hidden by hand.
    const unfiltered = await workshopFile(workbook => {
      const jobs = workbook.getWorksheet('Jobs')!;
      jobs.autoFilter = 'A1:F5';
      Object.assign(jobs.getRow(4), { hidden: true });
      Object.assign(jobs.getRow(6), { height: 30 });
      Object.assign(jobs.getRow(7), { height: 15, hidden: true });
    });
    const filter =
      '<filterColumn colId="0"><customFilters><customFilter operator="lessThan" val="18"/></customFilters></filterColumn>';
    const file = withPart(unfiltered, 'xl/worksheets/sheet1.xml', xml => {
      const filtered = xml.replace('<autoFilter ref="A1:F5"/>', `<autoFilter ref="A1:F5">${filter}</autoFilter>`);
      // As Excel writes a hidden row nobody has set the height of.
      return filtered.replace(/(<row r="7") ht="15" customHeight="1"/, '$1');
    });
    const saved = await savedAgain(file, async port => {
      expect(await port.layout('Jobs')).toEqual({
        hiddenRows: new Set([3, 6]),
        hiddenColumns: new Set(),
        isHidden: false,
        merges: [{ row: 7, column: 0, rows: 1, columns: 3 }],
      });
    });
    const rows = strFromU8(unzipSync(saved)['xl/worksheets/sheet1.xml']!).match(/<row [^>]*>/g)!;
    expect(rows.filter(row => row.includes(' hidden="1"')).map(row => /r="(\d+)"/.exec(row)![1])).toEqual(['4', '7']);
    expect(rows.find(row => row.includes('r="6"'))).toContain('ht="30"');
    expect((await readXlsx(saved)).data.sheets.sheet1!.mergeData).toEqual((await readXlsx(file)).data.sheets.sheet1!.mergeData);
  });

  it('reads a date as its day number (25 November 2026 is day 46351)', async () => {
    const { cells } = await readXlsx(await workshopFile());
    expect(cells.find(cell => cell.address === 'E2')!.cached).toBe(46_351);
  });

  it('stores our formulas the way Excel does, marked as dynamic arrays', async () => {
    const parts = unzipSync(await savedAgain(await workshopFile()));
    const sheet = strFromU8(parts['xl/worksheets/sheet1.xml']!);
    expect(sheet).toMatch(
      /<c r="D2"[^>]* cm="1"[^>]*><f t="array" ref="D2">_xldudf_HOSE_CUTLENGTH\(A2,B2,C2\)<\/f><v>14\.62<\/v>/,
    );
    expect(sheet).toMatch(/<f t="array" ref="D4:D5">_xldudf_HOSE_CUTLENGTH\(Overalls,B4:B5,1\)<\/f>/);
    expect(parts['xl/metadata.xml']).toBeDefined();
  });

  it('keeps formulas it has no function for, with the value the other program gave', async () => {
    const file = await workshopFile(workbook => {
      workbook.getWorksheet('Jobs')!.getCell('F3').value = { formula: 'NOSUCHFUNCTION(A2)', result: 7 };
    });
    const { cells } = await readXlsx(await savedAgain(file));
    expect(cells.find(cell => cell.address === 'F3')).toMatchObject({ formula: '=NOSUCHFUNCTION(A2)', cached: 7 });
  });
});
