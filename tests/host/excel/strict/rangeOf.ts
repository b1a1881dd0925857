import { addressOf, blockAt, sharedBlock, usedBlock } from './address';
import type { Batch, Block, Cell } from './batch';
import { guarded } from './guarded';
import { columnHiddenOf, columnPropertiesOf, mergedAreasOf, rowHiddenOf, rowPropertiesOf } from './layouts';
import { answerLimit, OPERATION_BYTES, refused } from './refusals';

const value = (cell: Cell) => (typeof cell === 'object' ? cell[1] : cell);
const formula = (cell: Cell) => (typeof cell === 'object' ? cell[0] : cell);
const isError = (cell: Cell) => /^#[A-Z/0]+[!?]?$/.test(String(value(cell)));
const valueType = (cell: Cell) => (isError(cell) ? 'Error' : typeof value(cell) === 'number' ? 'Double' : 'String');

/** Cells (`Jobs!B3`) that the formula of another cell (`B2`) of their sheet fills; a test sets them, and takes them away. */
export const excelSpills: Record<string, string> = {};

/**
 * A range of a sheet; no block = a null object. Each property set on it is noted, and stands in the workbook once it was synced.
 * @param key name or id of the sheet, which is looked for at the sync, as in Excel
 */
export function rangeOf(batch: Batch, key: string, at: () => Block | undefined): any {
  const { book } = batch;
  const block = () => at()!;
  const address = () => `${book.sheet(key).name}!${addressOf(block())}`;
  const range = guarded(batch.pending, () => (at() ? propertiesOf(batch, key, block()) : undefined), {
    get worksheet() {
      return batch.worksheet(key);
    },
    getIntersectionOrNullObject: () => rangeOf(batch, key, () => sharedBlock(block(), usedBlock(book.sheet(key).rows))),
    getCell: (r: number, c: number) =>
      rangeOf(batch, key, () => ({ row: block().row + r, column: block().column + c, rows: 1, columns: 1 })),
    getRow: (r: number) => rangeOf(batch, key, () => ({ ...block(), row: block().row + r, rows: 1 })),
    getColumnProperties: (asked: object) => columnPropertiesOf(batch, () => book.sheet(key).name, block, asked),
    getRowProperties: (asked: object) => rowPropertiesOf(batch, book.sheet(key).name, block(), asked),
    getMergedAreasOrNullObject: () => mergedAreasOf(batch, book.sheet(key).name, block()),
    getSpillParentOrNullObject: () => rangeOf(batch, key, () => spillParent(address())),
    select: () => batch.note(() => `select ${address()}`),
    format: { font: {}, fill: {}, borders: bordersOf(batch, block) },
    __address: address,
    __cells: () => (at() ? block().rows * block().columns : 0),
  });
  return new Proxy(range, {
    set(_, property, content) {
      batch.bytes += OPERATION_BYTES + JSON.stringify(content).length;
      batch.note(
        () => `${String(property)} of ${address()} = ${JSON.stringify(content)}`,
        () => set(batch, key, block(), String(property), content),
      );
      return true;
    },
  });
}

const spillParent = (address: string) => (excelSpills[address] ? blockAt(excelSpills[address]) : undefined);

/** What is set on a range stands in its cells; a single value in every one. */
function set({ book }: Batch, key: string, block: Block, property: string, content: unknown): void {
  const sheet = book.sheet(key);
  if (sheet.isProtected) throw refused(`${sheet.name} is protected`, 'AccessDenied');
  if (Array.isArray(content) && (content.length !== block.rows || content.some(row => row.length !== block.columns)))
    throw refused('the table does not have the shape of the range', 'InvalidArgument');
  for (let r = 0; r < block.rows; r++) {
    for (let c = 0; c < block.columns; c++) {
      const one: unknown = Array.isArray(content) ? content[r][c] : content;
      const [row, column] = [block.row + r, block.column + c];
      if (property === 'values' || property === 'formulas') book.type(key, row, column, one);
      if (property === 'numberFormat') sheet.formats.set(`${row},${column}`, String(one));
    }
  }
}

function propertiesOf({ book }: Batch, key: string, block: Block) {
  const { name, formats } = book.sheet(key);
  const isNull = answerLimit.code === 'null' && block.rows * block.columns > answerLimit.cells;
  const table = <T>(pick: (cell: Cell, row: number, column: number) => T) =>
    isNull
      ? null
      : Array.from({ length: block.rows }, (_, r) =>
          Array.from({ length: block.columns }, (__, c) => {
            const [row, column] = [block.row + r, block.column + c];
            return pick(book.cell(key, row, column), row, column);
          }),
        );
  return {
    address: `${name}!${addressOf(block)}`,
    rowIndex: block.row,
    columnIndex: block.column,
    rowCount: block.rows,
    columnCount: block.columns,
    get rowHidden() {
      return rowHiddenOf(name, block);
    },
    get columnHidden() {
      return columnHiddenOf(name, block);
    },
    get values() {
      return table(value);
    },
    get valueTypes() {
      return table(valueType);
    },
    get formulas() {
      return table(formula);
    },
    get numberFormat() {
      return table((_, row, column) => formats.get(`${row},${column}`) ?? 'General');
    },
    // Columns of 48 and rows of 15 points.
    left: 48 * block.column,
    top: 15 * block.row,
    width: 48 * block.columns,
    height: 15 * block.rows,
  };
}

/** As in Excel's older object model, a line between rows (columns) is refused where there is one row (column) only. */
function bordersOf(batch: Batch, block: () => Block): object {
  const getItem = (edge: string) => ({
    set style(style: string) {
      const isMissing =
        (edge === 'InsideHorizontal' && block().rows === 1) || (edge === 'InsideVertical' && block().columns === 1);
      if (isMissing) throw refused(`no ${edge} here`, 'InvalidArgument');
      batch.bytes += OPERATION_BYTES;
      batch.note(`${edge} ${style}`);
    },
  });
  return { getItem };
}
