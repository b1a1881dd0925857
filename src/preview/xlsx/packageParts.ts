/** `[Content_Types].xml` with a part declared; Override elements stand after Default ones or among them in any order. */
export function addContentType(xml: string, part: string, type: string): string {
  if (xml.includes(type)) return xml;
  return xml.replace('</Types>', `<Override PartName="/${part}" ContentType="${type}"/></Types>`);
}

/** Relationships with one of this type to the target, under an id that is still free. */
export function addRelationship(xml: string, type: string, target: string): string {
  if (xml.includes(type)) return xml;
  const taken = new Set([...xml.matchAll(/\bId="([^"]*)"/g)].map(([, id]) => id));
  let number = taken.size + 1;
  while (taken.has(`rId${number}`)) number++;
  const relationship = `<Relationship Id="rId${number}" Type="${type}" Target="${target}"/>`;
  return xml.replace('</Relationships>', `${relationship}</Relationships>`);
}
