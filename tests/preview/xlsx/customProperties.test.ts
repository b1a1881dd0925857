import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { headlessWorkbook } from '../../../src/preview/headless/headlessWorkbook';
import { loadScript } from '../../../src/preview/headless/loadScript';
import { hostFunctions } from '../../../src/preview/host/hostFunctions';
import { savedWorkbook } from '../../../src/preview/host/savedWorkbook';
import { UniverWorkbook } from '../../../src/preview/univerWorkbook';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { writeXlsx } from '../../../src/preview/xlsx/writeXlsx';
import { builtFunctions } from '../builtFunctions';
import { workshopFile } from '../workshopFile';

const functions = builtFunctions();
const PART = 'docProps/custom.xml';
const TYPE = 'application/vnd.openxmlformats-officedocument.custom-properties+xml';

/** Opens a file without a page, does something with it, and saves it. */
async function worked(file: Uint8Array, work: (port: UniverWorkbook) => Promise<void>): Promise<Uint8Array> {
  const { data, cells } = await readXlsx(file);
  const open = headlessWorkbook(data, hostFunctions(functions.metadata, loadScript(functions.script)));
  try {
    await work(new UniverWorkbook(open.univer, open.api));
    return await writeXlsx(savedWorkbook(open.univer, open.api, cells));
  } finally {
    open.dispose();
  }
}

/** The element of a file whose custom properties another program wrote; the first is the example of ECMA-376 part 1, 22.3. */
const FOREIGN = [
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Properties',
  ' xmlns="http://schemas.openxmlformats.org/officeDocument/2006/custom-properties"',
  ' xmlns:vt="http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes">',
  '<property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="2" name="Editor"><vt:lpwstr>John &amp; Co</vt:lpwstr></property>',
  '<property fmtid="{D5CDD505-2E9C-101B-9397-08002B2CF9AE}" pid="3" name="Document number"><vt:i4>1543</vt:i4></property>',
  '</Properties>',
].join('');

async function foreignFile(): Promise<Uint8Array> {
  const parts = unzipSync(await workshopFile());
  const relationship = `<Relationship Id="rId9" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/custom-properties" Target="${PART}"/>`;
  const change = (name: string, from: string, to: string) => strToU8(strFromU8(parts[name]!).replace(from, to));
  return zipSync({
    ...parts,
    [PART]: strToU8(FOREIGN),
    '[Content_Types].xml': change(
      '[Content_Types].xml',
      '</Types>',
      `<Override PartName="/${PART}" ContentType="${TYPE}"/></Types>`,
    ),
    '_rels/.rels': change('_rels/.rels', '</Relationships>', `${relationship}</Relationships>`),
  });
}

const TEXTS = {
  'unit.Jobs': 'mm',
  'headings.Müller & "Söhne" <1>': 'Cut\nlength\t= 5 < 6 & "7" \u{1f527}',
  'answers.#2': 'ü'.repeat(700) + '\u{1f527}'.repeat(300),
  blank: '',
};

it('texts remembered with a workbook stand in the saved file and are recalled from it, long and odd ones too', async () => {
  const saved = await worked(await workshopFile(), async port => {
    for (const [key, text] of Object.entries(TEXTS)) await port.remember(key, text);
  });
  // Office takes 255 characters in one property (its reference, DocumentProperty object).
  const pieces = [...strFromU8(unzipSync(saved)[PART]!).matchAll(/<vt:lpwstr>([^<]*)/g)].map(([, text]) => text!.length);
  expect(pieces.filter(length => length > 255)).toEqual([]);
  await worked(saved, async port => {
    for (const [key, text] of Object.entries(TEXTS)) expect(await port.recall(key)).toBe(text);
    expect(await port.recall('unit')).toBeUndefined();
  });
});

it('what is forgotten is in the file no more; a workbook without any has no such part', async () => {
  const saved = await worked(await workshopFile(), port => port.remember('unit.Jobs', 'mm'));
  const again = await worked(saved, port => port.remember('unit.Jobs', undefined));
  expect(unzipSync(again)[PART]).toBeUndefined();
  expect(strFromU8(unzipSync(again)['[Content_Types].xml']!)).not.toContain(TYPE);
});

it('custom properties of other programs are kept, with their kind', async () => {
  const saved = await worked(await foreignFile(), port => port.remember('unit.Jobs', 'mm'));
  const part = strFromU8(unzipSync(saved)[PART]!);
  expect(part).toContain('name="Editor"><vt:lpwstr>John &amp; Co</vt:lpwstr>');
  expect(part).toContain('name="Document number"><vt:i4>1543</vt:i4>');
  expect(part).toContain('name="benchrow.unit.Jobs"><vt:lpwstr>mm</vt:lpwstr>');
});
