const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const MARKS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
/** Characters that XML 1.0 cannot hold at all (its section 2.2). */

const IMPOSSIBLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** Text as it stands in XML, in an element or in an attribute; line ends and tabs as numbers, else a reader may change them. */
export function xmlEscaped(text: string): string {
  return text
    .replace(IMPOSSIBLE, '')
    .replace(/[&<>"]/g, mark => ESCAPES[mark]!)
    .replace(/[\t\n\r]/g, mark => `&#${mark.charCodeAt(0)};`);
}

/** The way back. */
export function xmlUnescaped(xml: string): string {
  return xml.replace(/&(?:#x([\da-f]+)|#(\d+)|(\w+));/gi, (whole, hex?: string, digits?: string, name?: string) => {
    if (name !== undefined) return MARKS[name] ?? whole;
    return String.fromCodePoint(hex === undefined ? Number(digits) : parseInt(hex, 16));
  });
}
