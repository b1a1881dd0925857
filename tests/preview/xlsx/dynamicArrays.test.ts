import ExcelJS from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { markDynamicArrays } from '../../../src/preview/xlsx/dynamicArrays';

/** A workbook as exceljs writes it: one formula of each kind of result, a spill, a foreign array formula, a plain formula. */
async function written(): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('Jobs');
  const array = (at: string, formula: string, result: unknown, ref = at) => {
    sheet.getCell(at).value = { formula, result, shareType: 'array', ref } as unknown as ExcelJS.CellFormulaValue;
  };
  sheet.getCell('A1').fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFEEEEEE' } };
  array('B1', '_xldudf_HOSE_CUTLENGTH(F1,G1,H1)', 1167.5);
  array('B2', '_xldudf_HOSE_CRIMPCHECK(F2:I2,J2,K2)', 'IN SPEC');
  array('B3', '_xldudf_HOSE_CRIMPCHECK(F3:I3,J3,K3)', '');
  array('B4', '_xldudf_HOSE_CUTLENGTH("a > b & c",G1,H1)', { error: '#VALUE!' });
  array('B5', '_xldudf_HOSE_CRIMPDETAIL(F2:I2,J2,K2)', 31.2, 'B5:E5');
  array('B6', 'INDEX(_xldudf_HOSE_CRIMPDETAIL(F2:I2,J2,K2),1,2)', 0.1);
  array('B7', 'TRANSPOSE(F1:F3)', 1, 'B7:D7');
  sheet.getCell('B8').value = { formula: 'F1+G1', result: 3 };
  sheet.getCell('B9').value = '_xldudf_HOSE_ as text';
  workbook.addWorksheet('Empty');
  return new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer);
}

function part(xlsx: Uint8Array, name: string): string {
  const bytes = unzipSync(xlsx)[name];
  if (!bytes) throw new Error(`${name} is missing`);
  return strFromU8(bytes);
}

const cell = (xml: string, at: string) => new RegExp(`<c r="${at}"[^>]*>`).exec(xml)?.[0] ?? '';

describe('markDynamicArrays', () => {
  let before: Uint8Array;
  let after: Uint8Array;
  beforeAll(async () => {
    before = await written();
    after = markDynamicArrays(before);
  });

  test.each([
    ['B1', 'a number', ''],
    ['B2', 'a text', 't="str"'],
    ['B3', 'an empty text', 't="str"'],
    ['B4', 'an error value', 't="e"'],
    ['B5', 'the first cell of a spill', ''],
    ['B6', 'our function inside a function of the host', ''],
  ])('marks %s, %s', (at, _, type) => {
    const tag = cell(part(after, 'xl/worksheets/sheet1.xml'), at);
    expect(tag).toContain(' cm="1"');
    expect(/ t="[a-z]+"/.exec(tag)?.[0].trim() ?? '').toBe(type);
  });

  test.each(['A1', 'B7', 'B8', 'B9'])('leaves %s, which holds none of our functions, as it is', at => {
    const name = 'xl/worksheets/sheet1.xml';
    expect(cell(part(after, name), at)).toBe(cell(part(before, name), at));
    expect(cell(part(after, name), at)).not.toBe('');
  });

  test('keeps formula, range and value of every cell', () => {
    const name = 'xl/worksheets/sheet1.xml';
    expect(part(after, name).replace(/ cm="1"/g, '')).toBe(part(before, name));
    expect(part(after, name)).toContain('<f t="array" ref="B5:E5">');
  });

  // ECMA-376 part 1, CT_Metadata (18.9.7): metadataTypes, metadataStrings, mdxMetadata, futureMetadata, cellMetadata, valueMetadata.
  test('writes the metadata in the order of its schema, with counts that are true', () => {
    const xml = part(after, 'xl/metadata.xml');
    const order = [...xml.matchAll(/<(metadataTypes|futureMetadata|cellMetadata)\b[^>]*count="(\d+)"/g)];
    expect(order.map(([, name, count]) => [name, count])).toEqual([
      ['metadataTypes', '1'],
      ['futureMetadata', '1'],
      ['cellMetadata', '1'],
    ]);
    expect(xml.match(/name="XLDAPR"/g)).toHaveLength(2);
    expect(xml).toContain('fDynamic="1"');
    // 18.9.15 rc: t counts metadata types from 1, v counts the records of the type from 0.
    expect(xml).toContain('<rc t="1" v="0"/>');
  });

  test('declares the content type once, and relates the part to the workbook under an id of its own', () => {
    expect(part(after, '[Content_Types].xml').match(/PartName="\/xl\/metadata\.xml"/g)).toHaveLength(1);
    const relationships = part(after, 'xl/_rels/workbook.xml.rels');
    const ids = [...relationships.matchAll(/\bId="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(relationships.match(/sheetMetadata" Target="metadata\.xml"/g)).toHaveLength(1);
  });

  test('finds a free relationship id where ids have gaps', () => {
    const parts = unzipSync(before);
    const name = 'xl/_rels/workbook.xml.rels';
    const count = strFromU8(parts[name]!).match(/<Relationship /g)!.length;
    parts[name] = strToU8(strFromU8(parts[name]!).replace('Id="rId1"', `Id="rId${count + 1}"`));
    const ids = [...part(markDynamicArrays(zipSync(parts)), name).matchAll(/\bId="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(count + 1);
  });

  test('changes nothing on a second pass', () => {
    expect(Buffer.from(markDynamicArrays(after)).equals(Buffer.from(after))).toBe(true);
  });

  test('uses the dynamic array entry that a workbook has already', () => {
    const parts = unzipSync(after);
    const name = 'xl/metadata.xml';
    const other = '<metadataType name="XLRICHVALUE" minSupportedVersion="120000"/>';
    parts[name] = strToU8(
      strFromU8(parts[name]!)
        .replace('<metadataTypes count="1">', `<metadataTypes count="2">${other}`)
        .replace(
          '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk>',
          '<cellMetadata count="2"><bk><rc t="1" v="0"/></bk><bk><rc t="2" v="0"/></bk>',
        ),
    );
    expect(cell(part(markDynamicArrays(zipSync(parts)), 'xl/worksheets/sheet1.xml'), 'B1')).toContain(' cm="2"');
  });

  test('adds no metadata to a workbook without our functions', async () => {
    const workbook = new ExcelJS.Workbook();
    workbook.addWorksheet('Plain').getCell('A1').value = 1;
    const plain = markDynamicArrays(new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer));
    expect(Object.keys(unzipSync(plain))).not.toContain('xl/metadata.xml');
  });

  test('gives a workbook that exceljs still reads', async () => {
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(after.slice().buffer as ArrayBuffer);
    const sheet = workbook.getWorksheet('Jobs')!;
    expect(sheet.getCell('B1').value).toMatchObject({ formula: '_xldudf_HOSE_CUTLENGTH(F1,G1,H1)', result: 1167.5 });
    expect(sheet.getCell('B2').result).toBe('IN SPEC');
    expect(sheet.getCell('B5').value).toMatchObject({ shareType: 'array', ref: 'B5:E5', result: 31.2 });
  });

  test('refuses a file that is no workbook', () => {
    expect(() => markDynamicArrays(new Uint8Array([1, 2, 3]))).toThrow();
    expect(() =>
      markDynamicArrays(
        zipSync({ 'xl/worksheets/sheet1.xml': strToU8('<c r="A1"><f t="array" ref="A1">_xldudf_HOSE_A()</f></c>') }),
      ),
    ).toThrow('[Content_Types].xml is missing');
  });
});
