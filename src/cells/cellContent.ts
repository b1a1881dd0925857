/** An error value that a cell held when it came in: its code (`#N/A`), and the sentence it carried, if any. */
export class IncomingError {
  constructor(
    readonly code: string,
    readonly message: string | undefined,
  ) {}
}

/** What a cell holds once host wrappings are taken off; null is blank. */
export type CellContent = number | string | boolean | null | IncomingError;

/** Error values as text: what is left of them once a sheet was pasted as text or came through a .csv file. */
const ERROR_TEXT = new Set(
  '#VALUE! #N/A #DIV/0! #NUM! #NULL! #REF! #NAME? #SPILL! #CALC! #BUSY! #FIELD! #CONNECT! #BLOCKED! #UNKNOWN! #GETTING_DATA'.split(
    ' ',
  ),
);
const ERROR_CODE = /^#[A-Z0-9/_]+[!?]?$/;

function fromText(cell: string): CellContent {
  const bare = cell.trim();
  if (bare === '') return null;
  return ERROR_TEXT.has(bare) ? new IncomingError(bare, undefined) : cell;
}

function fromObject(cell: Record<string, unknown>): CellContent {
  if (typeof cell.code === 'string' && ERROR_CODE.test(cell.code)) {
    return new IncomingError(cell.code, typeof cell.message === 'string' && cell.message ? cell.message : undefined);
  }
  if (cell.type === 'Error' || (cell.type === undefined && cell.basicType === 'Error')) {
    return new IncomingError(typeof cell.basicValue === 'string' ? cell.basicValue : '#VALUE!', undefined);
  }
  if (cell.type === 'Empty' || cell.basicType === 'Empty') return null;
  // Pictures and entities (a stock, a place) carry the basic value #VALUE!: they are no errors, but nothing to reckon with either.
  if ('basicValue' in cell && cell.basicType !== 'Error') return cellContent(cell.basicValue);
  return new IncomingError('#VALUE!', 'this cell holds a data type that has no plain value');
}

/**
 * A cell as a host hands it over, with its wrappings taken off: data types become their basic value, errors (a
 * CustomFunctions.Error, an error cell value or its text) an IncomingError, and null, "" and spaces blank (null).
 */
export function cellContent(cell: unknown): CellContent {
  if (cell === null || cell === undefined) return null;
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : new IncomingError('#NUM!', undefined);
  if (typeof cell === 'boolean') return cell;
  if (typeof cell === 'string') return fromText(cell);
  if (typeof cell === 'object') return fromObject(cell as Record<string, unknown>);
  return String(cell);
}
