/** Files that people take for a table, told by how they begin. */
const KINDS: readonly (readonly [kind: string, beginning: RegExp])[] = [
  ['a picture', /^(?:\u0089PNG|\u00ff\u00d8\u00ff|GIF8|BM.{4}\0\0\0\0|RIFF.{4}WEBP)/s],
  ['a PDF document', /^\s*%PDF-/],
  ['a text document', /^\s*\{\\rtf/],
  ['a web page', /^\s*<(?:!doctype|html|head|body|script)\b/i],
  ['an XML file', /^\s*<\?xml\b/i],
  ['a JSON file', /^\s*[[{]\s*(?:["[{]|$)/],
];
/** Signs that no table holds: control characters but tab, line ends, form feed and the end mark of old systems. */
const CONTROL = /[\0-\u0008\u000b\u000e-\u0019\u001b-\u001f]/;
const LOOK_AT = 4096;
const BYTE_ORDER_MARK = /^\u00ef\u00bb\u00bf/;

const isWideText = ([first, second]: Uint8Array) => (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);

/** What a file is that is neither a workbook nor a table as text, in words; undefined where it may be one. */
export function otherKind(bytes: Uint8Array): string | undefined {
  if (isWideText(bytes)) return undefined;
  const beginning = String.fromCharCode(...bytes.subarray(0, LOOK_AT)).replace(BYTE_ORDER_MARK, '');
  const [kind] = KINDS.find(([, pattern]) => pattern.test(beginning)) ?? [];
  return kind ?? (CONTROL.test(beginning) ? 'neither an .xlsx workbook nor a text file' : undefined);
}
