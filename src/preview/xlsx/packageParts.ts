const METADATA_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml';
const METADATA_RELATIONSHIP = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/sheetMetadata';

/** `[Content_Types].xml` with the metadata part declared; Override elements stand after Default ones or among them in any order. */
export function addContentType(xml: string): string {
  if (xml.includes(METADATA_TYPE)) return xml;
  return xml.replace('</Types>', `<Override PartName="/xl/metadata.xml" ContentType="${METADATA_TYPE}"/></Types>`);
}

/** The workbook's relationships with one to the metadata part, under an id that is still free. */
export function addRelationship(xml: string): string {
  if (xml.includes(METADATA_RELATIONSHIP)) return xml;
  const taken = new Set([...xml.matchAll(/\bId="([^"]*)"/g)].map(([, id]) => id));
  let number = taken.size + 1;
  while (taken.has(`rId${number}`)) number++;
  const relationship = `<Relationship Id="rId${number}" Type="${METADATA_RELATIONSHIP}" Target="metadata.xml"/>`;
  return xml.replace('</Relationships>', `${relationship}</Relationships>`);
}
