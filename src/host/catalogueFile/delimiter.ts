import Papa from 'papaparse';

/** The likelier ones first: they win a tie. */
const DELIMITERS = [',', ';', '\t', '|'] as const;
const GUESS_FROM = 2 ** 16;
const GUESS_ROWS = 50;

/** How often a delimiter parts the first rows. */
function partings(beginning: string, delimiter: string): number {
  const { data } = Papa.parse<string[]>(beginning, { delimiter, preview: GUESS_ROWS, skipEmptyLines: 'greedy' });
  return data.reduce((sum, row) => sum + row.length - 1, 0);
}

/**
 * What parts the cells of a .csv text, guessed from its beginning: what parts it most often. A row has no more decimal commas than
 * delimiters, since its first cell is a name, and the row of headings has none: so a title with a comma in it does not mislead.
 */
export function delimiterOf(text: string): string {
  const beginning = text.slice(0, GUESS_FROM);
  const found = DELIMITERS.map(delimiter => ({ delimiter, count: partings(beginning, delimiter) }));
  return found.reduce((best, one) => (one.count > best.count ? one : best)).delimiter;
}
