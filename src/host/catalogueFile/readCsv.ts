import Papa from 'papaparse';
import { headingHolds } from '../../core/catalogue/proposedHeading';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { decimalMark, isSureComma, isUnsure, markedNumber, mayBeName, type DecimalMark } from './decimalMark';
import { decodeText } from './decodeText';
import { delimiterOf } from './delimiter';
import { MOST_ROWS, requireFileSize, requireTableSize, UnreadableTable } from './fileLimits';
import { breathe, type Watch } from '../../workbook/watch';

/** Characters that are taken apart before the page may breathe. */
const PIECE = 2 ** 19;
/** Pieces without a row's end, after which a row is too long to be one: what is left of a row is read again with the next piece. */
const MOST_PIECES_A_ROW = 3;
const ROWS_A_PIECE = 5000;
/** Rows at the top among which the headings are. */
const LOOK_IN = 30;

/** What stands in a column: names and other text, numbers, anything with decimal commas in it, or anything. */
type Holds = 'text' | 'number' | 'decimals' | undefined;

/** Names stay as they are typed: as a number, `1E5` would become 100000 and `1.500` 1.5. */
function cellOf(text: string, mark: DecimalMark, holds: Holds): RawCell {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  if (holds === 'text' || (holds === undefined && isUnsure(trimmed, mark))) return text;
  if (holds !== 'number' && mayBeName(trimmed, mark)) return text;
  return markedNumber(trimmed, mark) ?? text;
}

/** What each column holds, by its heading; the first column of every table of parts is one of names. */
function columnKinds(rows: readonly (readonly string[])[]): Holds[] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  // A title may stand above the headings.
  const top = rows.slice(0, LOOK_IN);
  return Array.from({ length: width }, (_, column) => {
    const said = top.map(row => headingHolds(row[column] ?? '')).find(kind => kind !== undefined);
    if (said !== undefined) return said;
    if (column === 0) return 'text';
    // A number that can only have decimals tells how the others of its column are meant.
    return rows.some(row => isSureComma(row[column]?.trim() ?? '')) ? 'decimals' : undefined;
  });
}

const isBlank = (row: readonly string[]) => row.every(cell => cell.trim() === '');

const openQuote = (name: string, row: number) =>
  new UnreadableTable(
    `${name}: a quotation mark in row ${row} is never closed, so everything after it is one cell. Correct it, then load the file again`,
  );

const endlessRow = (name: string, row: number) =>
  new UnreadableTable(
    `${name}: row ${row} has more than a million characters. Is a quotation mark there never closed? Correct it, then load the file again`,
  );

/** The rows of a text as they stand, blank ones among them, so that row numbers are those of the file. */
function rowsOf(name: string, text: string, delimiter: string, watch: Watch): Promise<string[][]> {
  const rows: string[][] = [];
  let columns = 0;
  let endless = 0;
  return new Promise((resolve, reject) => {
    Papa.parse<string[]>(text, {
      chunkSize: PIECE,
      delimiter,
      chunk: ({ data, errors, meta }: Papa.ParseResult<string[]>, parser: Papa.Parser) => {
        try {
          if (errors.some(({ code }) => code === 'MissingQuotes')) throw openQuote(name, rows.length + data.length);
          endless = data.length === 0 ? endless + 1 : 0;
          if (endless === MOST_PIECES_A_ROW) throw endlessRow(name, rows.length + 1);
          for (const row of data) {
            rows.push(row);
            columns = Math.max(columns, row.length);
          }
          requireTableSize(name, Math.min(rows.length, MOST_ROWS + 1), columns);
        } catch (error) {
          reject(error);
          return parser.abort();
        }
        parser.pause();
        breathe(watch, Math.min(1, meta.cursor / Math.max(1, text.length)) * 0.7).then(
          () => parser.resume(),
          error => {
            reject(error);
            parser.abort();
          },
        );
      },
      complete: () => resolve(rows),
    });
  });
}

/**
 * A .csv file as a table: any delimiter, decimal point or comma, UTF-8 with or without byte order mark, UTF-16 or Windows-1252. Formulas
 * in it stay text. Large files are read in pieces, between which the page can be drawn and the reading stopped.
 * @throws UnreadableTable where it is too large or holds nothing; Stopped where the user stops it
 */
export async function readCsvFile(
  name: string,
  bytes: Uint8Array,
  watch: Watch = {},
): Promise<{ readonly table: RawTable; readonly decimalComma: boolean }> {
  requireFileSize(name, bytes.length);
  await breathe(watch, 0);
  const text = decodeText(bytes).replace(/^\ufeff/, '');
  const delimiter = delimiterOf(text);
  const rows = await rowsOf(name, text, delimiter, watch);
  while (rows.length > 0 && isBlank(rows.at(-1)!)) rows.pop();
  if (rows.length === 0) throw new UnreadableTable(`${name} is empty`);
  const mark = decimalMark(rows, delimiter);
  const kinds = columnKinds(rows);
  const table: RawCell[][] = [];
  for (const [index, row] of rows.entries()) {
    table.push(row.map((cell, column) => (index === 0 ? cell.trim() || null : cellOf(cell, mark, kinds[column]))));
    if (index % ROWS_A_PIECE === ROWS_A_PIECE - 1) await breathe(watch, 0.7 + (0.3 * index) / rows.length);
  }
  return { table, decimalComma: mark === ',' };
}

/** As readCsvFile: the table alone. */
export async function readCsv(name: string, bytes: Uint8Array, watch: Watch = {}): Promise<RawTable> {
  return (await readCsvFile(name, bytes, watch)).table;
}
