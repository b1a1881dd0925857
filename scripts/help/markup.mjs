/** Text as it may stand in HTML, in attributes, too. */
export const escaped = text =>
  String(text).replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** Fills `{NAMES}` of a template; text that is put in is not looked through again. */
export function filled(template, parts) {
  return template.replace(/\{([A-Z]+)\}/g, (mark, name) => parts[name] ?? mark);
}
