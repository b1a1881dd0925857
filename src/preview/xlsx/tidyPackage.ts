import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { addCustomProperties, type CustomProperties } from './customProperties';

const SHEET_PART = /^xl\/worksheets\/[^/]+\.xml$/;
const WORKBOOK_PART = 'xl/workbook.xml';

/** The library marks every default height but its own as set by hand; Excel then no longer fits rows to wrapped text. */
function withFittingRows(sheetXml: string): string {
  return sheetXml.replace(/<sheetFormatPr\b[^>]*>/, properties => properties.replace(' customHeight="1"', ''));
}

/** What is printed of a sheet is kept as names; the library does not double an apostrophe in the sheet's name there. */
function withQuotedSheets(workbookXml: string): string {
  const sheets = [...workbookXml.matchAll(/<sheet\b[^>]*?\bname="([^"]*)"/g)].map(([, name]) => name!);
  return workbookXml.replace(
    /(<definedName name="_xlnm\.[^"]*" localSheetId="(\d+)">)([^<]*)/g,
    (_, tag: string, index: string, ranges: string) => {
      const name = sheets[Number(index)] ?? '';
      return tag + ranges.replaceAll(`&apos;${name}&apos;!`, `&apos;${name.replaceAll('&apos;', '&apos;&apos;')}&apos;!`);
    },
  );
}

/** A workbook as the library writes it, with what it writes otherwise than Excel reads it put right, and with custom properties, which it knows none of. */
export function tidyPackage(xlsx: Uint8Array, properties: CustomProperties): Uint8Array {
  const parts = unzipSync(xlsx);
  for (const [name, part] of Object.entries(parts)) {
    const tidy = SHEET_PART.test(name) ? withFittingRows : name === WORKBOOK_PART ? withQuotedSheets : undefined;
    if (tidy) parts[name] = strToU8(tidy(strFromU8(part)));
  }
  addCustomProperties(parts, properties);
  return zipSync(parts, { level: 0 });
}
