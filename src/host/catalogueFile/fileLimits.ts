/** Most bytes of a file that is read. */
const LARGEST_FILE = 50 * 2 ** 20;
/** Most bytes that an .xlsx may unpack to. */
export const LARGEST_UNPACKED = 150 * 2 ** 20;
export const MOST_ROWS = 200_000;
const MOST_COLUMNS = 200;
/** Most cells of a table: 200,000 rows of 20 columns. */
const MOST_CELLS = 4_000_000;

/** A file that is not read, with a sentence that says why and what to do. */
export class UnreadableTable extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UnreadableTable';
  }
}

/** Refuses a file that is too large to be a parts table. */
export function requireFileSize(name: string, bytes: number): void {
  if (bytes <= LARGEST_FILE) return;
  throw new UnreadableTable(
    `${name} has ${Math.ceil(bytes / 2 ** 20)} MB, more than ${LARGEST_FILE / 2 ** 20}: leave out what is not parts data`,
  );
}

/** Refuses a table with more rows or columns than a parts table has. */
export function requireTableSize(name: string, rows: number, columns: number): void {
  if (rows > MOST_ROWS)
    throw new UnreadableTable(`${name} has more than ${MOST_ROWS} rows: split it or leave out what is not parts data`);
  if (columns > MOST_COLUMNS)
    throw new UnreadableTable(`${name} has ${columns} columns, more than ${MOST_COLUMNS}: is this the right file?`);
  if (rows * columns > MOST_CELLS)
    throw new UnreadableTable(
      `${name} has ${rows} rows of ${columns} columns, more than ${MOST_CELLS} cells: leave out columns that are not parts data`,
    );
}
