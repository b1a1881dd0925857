import { addressOf, sharedBlock, usedBlock } from './address';
import type { Batch, Block, Cell } from './batch';
import { guarded } from './guarded';
import { mergedAreasOf, rowHiddenOf, rowPropertiesOf } from './layouts';
import { answerLimit, refused } from './refusals';

const value = (cell: Cell) => (typeof cell === 'object' ? cell[1] : cell);
const formula = (cell: Cell) => (typeof cell === 'object' ? cell[0] : cell);
const isError = (cell: Cell) => /^#[A-Z/0]+[!?]?$/.test(String(value(cell)));
const valueType = (cell: Cell) => (isError(cell) ? 'Error' : typeof value(cell) === 'number' ? 'Double' : 'String');

/** A range of a sheet; undefined = a null object. Each property set on it is noted. */
export function rangeOf(batch: Batch, sheet: string, block: Block | undefined): any {
  const address = () => `${sheet}!${addressOf(block!)}`;
  const range = guarded(batch.pending, () => block && propertiesOf(batch, sheet, block), {
    get worksheet() {
      return batch.worksheet(sheet);
    },
    getIntersectionOrNullObject: () => rangeOf(batch, sheet, sharedBlock(block!, usedBlock(batch.sheets[sheet]))),
    getCell: (r: number, c: number) =>
      rangeOf(batch, sheet, { row: block!.row + r, column: block!.column + c, rows: 1, columns: 1 }),
    getRowProperties: (asked: object) => rowPropertiesOf(batch, sheet, block!, asked),
    getMergedAreasOrNullObject: () => mergedAreasOf(batch, sheet, block!),
    select: () => batch.note(`select ${address()}`),
    format: { font: {}, fill: {}, borders: bordersOf(batch, block) },
    __address: address,
    __cells: () => (block ? block.rows * block.columns : 0),
  });
  return new Proxy(range, {
    set(_, property, content) {
      batch.writes.push(() => batch.written.push(`${String(property)} of ${address()} = ${JSON.stringify(content)}`));
      return true;
    },
  });
}

function propertiesOf({ sheets }: Batch, sheet: string, block: Block) {
  const isNull = answerLimit.code === 'null' && block.rows * block.columns > answerLimit.cells;
  const table = <T>(pick: (cell: Cell) => T) =>
    isNull
      ? null
      : Array.from({ length: block.rows }, (_, r) =>
          Array.from({ length: block.columns }, (__, c) => pick(sheets[sheet]?.[block.row + r]?.[block.column + c] ?? '')),
        );
  return {
    address: `${sheet}!${addressOf(block)}`,
    rowIndex: block.row,
    columnIndex: block.column,
    rowCount: block.rows,
    columnCount: block.columns,
    get rowHidden() {
      return rowHiddenOf(sheet, block);
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
      return table(() => 'General');
    },
    // Columns of 48 and rows of 15 points.
    left: 48 * block.column,
    top: 15 * block.row,
    width: 48 * block.columns,
    height: 15 * block.rows,
  };
}

/** As in Excel's older object model, a line between rows (columns) is refused where there is one row (column) only. */
function bordersOf(batch: Batch, block: Block | undefined): object {
  const getItem = (edge: string) => ({
    set style(style: string) {
      const isMissing = (edge === 'InsideHorizontal' && block?.rows === 1) || (edge === 'InsideVertical' && block?.columns === 1);
      if (isMissing) throw refused(`no ${edge} here`, 'InvalidArgument');
      batch.note(`${edge} ${style}`);
    },
  });
  return { getItem };
}
