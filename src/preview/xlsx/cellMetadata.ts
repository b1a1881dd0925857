/** Where a workbook keeps what it knows about cells beyond value and formula. */
export const METADATA_PART = 'xl/metadata.xml';
export const METADATA_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml';
export const METADATA_RELATIONSHIP = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata';

/** One metadata type (XLDAPR, dynamic array properties), one record of it, and one cell metadata entry that points to the record. */
const DYNAMIC_ARRAY_METADATA = [
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n',
  '<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"',
  ' xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">',
  '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1"',
  ' merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes>',
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">',
  '<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>',
  '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>',
].join('');

/**
 * The cell metadata of a workbook that marks dynamic arrays.
 * @param existing the workbook's metadata part, where it has one
 * @returns the part, and the index that a cell's `cm` takes (1 = first entry of cellMetadata)
 * @throws Error where the workbook has metadata of another kind only
 */
export function cellMetadata(existing?: string): { xml: string; index: number } {
  if (existing === undefined) return { xml: DYNAMIC_ARRAY_METADATA, index: 1 };
  const types = [...existing.matchAll(/<metadataType\b[^>]*\bname="([^"]*)"/g)].map(([, name]) => name);
  const [entries = ''] = /<cellMetadata\b.*?<\/cellMetadata>/s.exec(existing) ?? [];
  const type = types.indexOf('XLDAPR') + 1;
  const entry = [...entries.matchAll(/<rc\b[^>]*\bt="(\d+)"/g)].findIndex(([, number]) => Number(number) === type);
  if (type === 0 || entry < 0) throw new Error('this workbook has cell metadata of a kind that cannot be added to');
  return { xml: existing, index: entry + 1 };
}
