import { strFromU8, strToU8, unzipSync, zipSync, type Zippable } from 'fflate';
import { cellMetadata, METADATA_PART, METADATA_RELATIONSHIP, METADATA_TYPE } from './cellMetadata';
import { addContentType, addRelationship } from './packageParts';

/** Zip entries carry this time (local, as zip times are), so that equal workbooks are equal files. */
const ZIP_TIME = new Date(1980, 0, 1);
/** Excel recalculates files of an older calculation engine when they open, and then loses the values of functions it has not loaded yet. */
const CALCULATION_ENGINE = '191029';
const OUR_FUNCTION = '_xldudf_HOSE_';
const CELL = /<c\b((?:[^>"/]|"[^"]*")*)>(.*?)<\/c>/gs;
const ARRAY_FORMULA = /^<f\b[^>]*\bt="array"[^>]*>([^<]*)<\/f>(?:<v>([^<]*)<\/v>)?/;

/** A cell's attributes with the given ones set. */
function withAttribute(attributes: string, name: string, value: string): string {
  const present = new RegExp(`(\\s${name}=)"[^"]*"`);
  return present.test(attributes) ? attributes.replace(present, `$1"${value}"`) : `${attributes} ${name}="${value}"`;
}

/** A worksheet part with its cells that hold our functions marked, and how many there are. */
function markCells(sheetXml: string, cellMetadataIndex: number): { xml: string; marked: number } {
  let marked = 0;
  const xml = sheetXml.replace(CELL, (whole, attributes: string, content: string) => {
    const [, formula, value] = ARRAY_FORMULA.exec(content) ?? [];
    if (!formula?.includes(OUR_FUNCTION)) return whole;
    marked++;
    const isText = value !== undefined && !/\st="/.test(attributes) && !Number.isFinite(Number(value || NaN));
    const typed = isText ? withAttribute(attributes, 't', 'str') : attributes;
    return `<c${withAttribute(typed, 'cm', String(cellMetadataIndex))}>${content}</c>`;
  });
  return { xml, marked };
}

/**
 * Last pass over an .xlsx: marks every cell that holds one of our worksheet functions as a dynamic array formula, as Excel
 * itself does. Without the mark Excel shows `{=…}` and a spill of the old, fixed kind.
 * @param xlsx a workbook whose cells of ours stand as `<f t="array" ref="…">_xldudf_HOSE_…</f>`
 * @returns the workbook with its marks; equal input gives equal bytes, a marked workbook stays as it is
 * @throws Error where the file is no .xlsx
 * Source: ECMA-376 part 1, 18.9 (metadata); [MS-XLSX] 2.4 (dynamicArrayProperties).
 */
export function markDynamicArrays(xlsx: Uint8Array): Uint8Array {
  const parts = new Map(Object.entries(unzipSync(xlsx)));
  const read = (name: string) => {
    const part = parts.get(name);
    if (!part) throw new Error(`not an .xlsx workbook: ${name} is missing`);
    return strFromU8(part);
  };
  const write = (name: string, xml: string) => parts.set(name, strToU8(xml));

  const metadata = cellMetadata(parts.has(METADATA_PART) ? read(METADATA_PART) : undefined);
  let marked = 0;
  for (const name of [...parts.keys()].filter(part => /^xl\/worksheets\/[^/]+\.xml$/.test(part))) {
    const sheet = markCells(read(name), metadata.index);
    if (sheet.marked > 0) write(name, sheet.xml);
    marked += sheet.marked;
  }
  if (marked > 0) {
    write(METADATA_PART, metadata.xml);
    const relationships = 'xl/_rels/workbook.xml.rels';
    write('[Content_Types].xml', addContentType(read('[Content_Types].xml'), METADATA_PART, METADATA_TYPE));
    write(relationships, addRelationship(read(relationships), METADATA_RELATIONSHIP, 'metadata.xml'));
    write('xl/workbook.xml', read('xl/workbook.xml').replace(/(<calcPr\b[^>]*\bcalcId=)"\d+"/, `$1"${CALCULATION_ENGINE}"`));
  }
  const zippable: Zippable = Object.fromEntries(parts);
  return zipSync(zippable, { mtime: ZIP_TIME, level: 6 });
}
