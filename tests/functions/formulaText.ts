const LITERAL = /\s*(?:\{[^}]*\}|"[^"]*"|[^,{"]+)/g;
const OMITTED = '\u0000';

function valueOf(literal: string): unknown {
  const text = literal.trim();
  if (text.startsWith('"')) return text.slice(1, -1);
  return text === '' ? null : Number(text);
}

/** `{1,2;3,4}`, `"text"`, `12.5` or an omitted argument as the block of cells a host passes. */
function blockOf(literal: string): any[][] | null {
  if (literal.includes(OMITTED)) return null;
  if (!literal.startsWith('{')) return [[valueOf(literal)]];
  const rows = literal.slice(1, -1).split(';');
  return rows.map(row => row.split(',').map(cell => valueOf(cell)));
}

/** The arguments of a formula's text as blocks of cells; `named` gives what a name like `Catalogue` stands for. */
export function argumentsOf(text: string, named: Readonly<Record<string, any[][]>> = {}): (any[][] | null)[] {
  const literals = [...text.replace(/,(?=\s*,)/g, `, "${OMITTED}"`).matchAll(LITERAL)].map(([literal]) => literal.trim());
  return literals.map(literal => named[literal] ?? blockOf(literal));
}

/** Asserts that cells, in reading order, are what an example tells: text as it stands, numbers to the digits it shows. */
export function expectCells(cells: readonly unknown[], message: string): void {
  const words = message.split(/, | and /).map(word => word.trim());
  expect(cells.length).toBeGreaterThanOrEqual(words.length);
  words.forEach((word, index) => {
    if (typeof cells[index] === 'string') expect(cells[index]).toBe(word);
    else expect(cells[index]).toBeCloseTo(Number(word), word.split('.')[1]?.length ?? 0);
  });
}
