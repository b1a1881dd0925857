/** Arguments that are words of the function, not data: they stay in the formula. */
const WORDS = new Set(['unit', 'rule', 'field', 'side']);
const LITERAL = /\s*(?:\{[^}]*\}|"[^"]*"|[^,{"]+|(?<=,)(?=,))/g;

/** Letters of a column by its number from zero: 27 gives AB. */
export const letters = column =>
  (column < 26 ? '' : letters(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));

function valueOf(literal) {
  const text = literal.trim();
  if (text.startsWith('"')) return text.slice(1, -1);
  return Number(text);
}

const isReference = literal => !/^["{\d.-]/.test(literal);

function blockOf(literal) {
  if (!literal.startsWith('{')) return [[valueOf(literal)]];
  return literal
    .slice(1, -1)
    .split(';')
    .map(row => row.split(',').map(valueOf));
}

/** The words of `gives` as rows: of a table as wide as its headings in the text, of a list as high as its first argument. */
function resultRows(gives, result, height) {
  const words = gives.split(/(?:, | and )(?![^(]*\))/).map(word => word.trim());
  const known = result.replace(/ \([^)]*\)/g, '');
  let width = words.length;
  while (width > 2 && !known.includes(words.slice(0, width).join(', '))) width -= 1;
  if (width === 2 || words.length === width) return words.length === height && height > 1 ? words.map(word => [word]) : [words];
  return Array.from({ length: Math.ceil(words.length / width) }, (_, row) => words.slice(row * width, (row + 1) * width));
}

/**
 * An example of JSDoc laid out as a sheet: each argument in cells of its own under its name, the formula that takes them, its result.
 * @param {{ example: { call: string, gives: string }, parameters: { name: string }[], result: string }} entry
 * @returns {{ headings: string[], rows: unknown[][], formula: string, result: string[][] }} rows of unequal height are filled with blanks
 */
export function exampleSheet({ example, parameters, result }) {
  const [, id, args] = /^=HOSE\.([A-Z0-9]+)\((.*)\)$/.exec(example.call);
  const headings = [];
  const columns = [];
  let height = 1;
  const written = [...args.matchAll(LITERAL)].map(([text], index) => {
    const literal = text.trim();
    if (literal === '' || isReference(literal) || literal === '""' || WORDS.has(parameters[index].name)) return literal;
    const block = blockOf(literal);
    const first = columns.length;
    if (index === 0 || height === 1) height = block.length;
    for (let column = 0; column < block[0].length; column += 1) {
      headings.push(block[0].length > 1 ? `${parameters[index].name} ${column + 1}` : parameters[index].name);
      columns.push(block.map(row => row[column]));
    }
    const from = `${letters(first)}2`;
    const to = `${letters(columns.length - 1)}${block.length + 1}`;
    return from === to ? from : `${from}:${to}`;
  });
  const rows = Array.from({ length: Math.max(0, ...columns.map(column => column.length)) }, (_, row) =>
    columns.map(column => column[row] ?? ''),
  );
  return { headings, rows, formula: `=HOSE.${id}(${written.join(', ')})`, result: resultRows(example.gives, result, height) };
}
