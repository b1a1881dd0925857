import { strFromU8, strToU8, unzipSync } from 'fflate';
import { keyRemembered, rememberedKey } from '../../workbook/rememberedKey';
import { addContentType, addRelationship } from './packageParts';
import { xmlEscaped, xmlUnescaped } from './xmlText';

/** One custom property of a file, all of it as the file writes it. */
export interface FileProperty {
  readonly name: string;
  /** Kind of its value: `lpwstr`, `i4`, `bool`, `filetime`, … */
  readonly type: string;
  readonly value: string;
}

/** Custom properties of a file: the texts that are remembered with it, and those of others. */
export interface CustomProperties {
  readonly remembered: ReadonlyMap<string, string>;
  readonly others: readonly FileProperty[];
}

/** ECMA-376 part 1, 15.2.12.2 (custom file properties part) and 22.3 (its elements), 22.4 (kinds of values). */
const PART = 'docProps/custom.xml';
const CONTENT_TYPE = 'application/vnd.openxmlformats-officedocument.custom-properties+xml';
const RELATIONSHIP = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/custom-properties';
const NAMESPACE = 'http://schemas.openxmlformats.org/officeDocument/2006/custom-properties';
const VALUES = 'http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes';
/** Properties that people and programs define (ECMA-376 part 1, 22.3.2.2). */
const FORMAT_ID = '{D5CDD505-2E9C-101B-9397-08002B2CF9AE}';
const FIRST_ID = 2;
/** One property with one plain value; lists and blobs are none. */
const PROPERTY = /<(?:\w+:)?property\b([^>]*)>\s*<(?:\w+:)?(\w+)\b[^>]*?(?:\/>|>([^<]*)<\/[^>]*>)\s*<\/(?:\w+:)?property>/g;
/** Longer texts stand in several properties: Office takes 255 characters in one (its reference, DocumentProperty object), and some count twice. */
const CHARACTERS_A_PIECE = 120;
const PIECE = /^#(\d+)#(.*)$/s;

function fileProperties(key: string, text: string): FileProperty[] {
  const characters = [...text];
  const count = Math.max(1, Math.ceil(characters.length / CHARACTERS_A_PIECE));
  return Array.from({ length: count }, (_, index) => ({
    name: xmlEscaped(rememberedKey(index === 0 ? key : `#${index + 1}#${key}`)),
    type: 'lpwstr',
    value: xmlEscaped(characters.slice(index * CHARACTERS_A_PIECE, (index + 1) * CHARACTERS_A_PIECE).join('')),
  }));
}

function propertiesIn(xml: string): FileProperty[] {
  return [...xml.matchAll(PROPERTY)].flatMap(([, attributes = '', type = '', value = '']) => {
    const [, name] = /\sname="([^"]*)"/.exec(attributes) ?? [];
    return name === undefined ? [] : [{ name, type, value }];
  });
}

/** Custom properties of an .xlsx file. */
export function readCustomProperties(xlsx: Uint8Array): CustomProperties {
  const part = unzipSync(xlsx, { filter: ({ name }) => name === PART })[PART];
  const remembered = new Map<string, string>();
  const others: FileProperty[] = [];
  for (const property of part ? propertiesIn(strFromU8(part)) : []) {
    const key = keyRemembered(xmlUnescaped(property.name));
    const of = key === undefined ? undefined : (PIECE.exec(key)?.[2] ?? key);
    if (of === undefined) others.push(property);
    // Pieces stand one after the other, as they were written.
    else remembered.set(of, (remembered.get(of) ?? '') + xmlUnescaped(property.value));
  }
  return { remembered, others };
}

/** Puts custom properties into the parts of a package that has none; without any it stays as it is. */
export function addCustomProperties(parts: Record<string, Uint8Array>, { remembered, others }: CustomProperties): void {
  const properties = [...others, ...[...remembered].flatMap(([key, text]) => fileProperties(key, text))];
  if (properties.length === 0) return;
  const elements = properties.map(
    ({ name, type, value }, index) =>
      `<property fmtid="${FORMAT_ID}" pid="${FIRST_ID + index}" name="${name}"><vt:${type}>${value}</vt:${type}></property>`,
  );
  parts[PART] = strToU8(
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Properties xmlns="${NAMESPACE}" xmlns:vt="${VALUES}">${elements.join('')}</Properties>`,
  );
  const change = (name: string, add: (xml: string) => string) => (parts[name] = strToU8(add(strFromU8(parts[name]!))));
  change('[Content_Types].xml', xml => addContentType(xml, PART, CONTENT_TYPE));
  change('_rels/.rels', xml => addRelationship(xml, RELATIONSHIP, PART));
}
