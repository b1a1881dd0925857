/** @jest-environment ./tests/quickJsdom.mjs */
import { strFromU8, strToU8 } from 'fflate';
import { addCustomProperties } from '../../../src/preview/xlsx/customProperties';

const PART = 'docProps/custom.xml';
const VALUES = 'http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes';

const parsed = (bytes: Uint8Array) => new DOMParser().parseFromString(strFromU8(bytes), 'application/xml');

function packageWith(remembered: Record<string, string>) {
  const parts = {
    '[Content_Types].xml': strToU8('<Types xmlns="types"></Types>'),
    '_rels/.rels': strToU8('<Relationships xmlns="relationships"><Relationship Id="rId2" Type="t" Target="t"/></Relationships>'),
  } as Record<string, Uint8Array>;
  const others = [{ name: 'Document number', type: 'i4', value: '1543' }];
  addCustomProperties(parts, { remembered: new Map(Object.entries(remembered)), others });
  return parts;
}

// ECMA-376 part 1, 15.2.12.2: what a file's custom properties are called in content types and relationships.
it('is declared in the package once, under an id that was free', () => {
  const parts = packageWith({ 'unit.Jobs': 'mm' });
  const override = parsed(parts['[Content_Types].xml']!).querySelector('Override')!;
  expect([override.getAttribute('PartName'), override.getAttribute('ContentType')]).toEqual([
    '/docProps/custom.xml',
    'application/vnd.openxmlformats-officedocument.custom-properties+xml',
  ]);
  const relationships = [...parsed(parts['_rels/.rels']!).querySelectorAll('Relationship')];
  expect(relationships.map(each => [each.getAttribute('Id'), each.getAttribute('Type'), each.getAttribute('Target')])).toEqual([
    ['rId2', 't', 't'],
    ['rId3', 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/custom-properties', PART],
  ]);
});

// ECMA-376 part 1, 22.3.2.2 (property): names are unique, ids count from 2; Office takes 255 characters in a text (its reference, DocumentProperty object).
it('any XML reader reads it: names and ids once each, texts as they are and of 255 characters at most', () => {
  const texts = { 'headings.Müller & "Söhne" <1>': 'Cut\nlength\t= 5 < 6', long: 'ü'.repeat(1000) };
  const document = parsed(packageWith(texts)[PART]!);
  const properties = [...document.querySelectorAll('property')];
  expect(properties.map(each => Number(each.getAttribute('pid')))).toEqual(properties.map((_, index) => index + 2));
  expect(new Set(properties.map(each => each.getAttribute('name'))).size).toBe(properties.length);
  const values = properties.map(each => each.firstElementChild!);
  expect(new Set(values.map(value => value.namespaceURI))).toEqual(new Set([VALUES]));
  expect(values.map(value => value.localName)).toEqual(['i4', ...properties.slice(1).map(() => 'lpwstr')]);
  expect([properties[1]!.getAttribute('name'), values[1]!.textContent]).toEqual([
    'benchrow.headings.Müller & "Söhne" <1>',
    'Cut\nlength\t= 5 < 6',
  ]);
  const pieces = values.slice(2).map(value => value.textContent!);
  expect(pieces.join('')).toBe(texts.long);
  expect(Math.max(...pieces.map(piece => piece.length))).toBeLessThanOrEqual(255);
});
