/** Text that is markup already. */
export class Markup {
  constructor(readonly text: string) {}
}

type Part = string | number | Markup | readonly Markup[] | undefined | false;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

function partText(part: Part): string {
  if (part === undefined || part === false) return '';
  if (part instanceof Markup) return part.text;
  if (typeof part === 'object') return part.map(one => one.text).join('');
  return String(part).replace(/[&<>"']/g, letter => ENTITIES[letter]!);
}

/** Markup from a template; everything put into it is escaped unless it is markup itself. */
export function markup(template: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(template.reduce((text, piece, index) => text + partText(parts[index - 1]) + piece));
}

/** A whole page to print: without scripts, without anything from elsewhere. */
export function printPage(title: string, style: string, body: readonly Markup[]): string {
  const head = markup`<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title>`;
  return `<!doctype html><html lang="en"><head>${head.text}<style>${style}</style></head><body><main>${body.map(part => part.text).join('')}</main></body></html>`;
}
