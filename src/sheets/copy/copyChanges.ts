import { sheetText } from '../../core/catalogue/sheetText';
import { addressOf, type Block } from '../../workbook/a1';
import type { CopiedCell, CopiedLooks, CopiedSheet, CopiedWorkbook } from '../../workbook/copiedWorkbook';
import type { CellStyle, Change } from '../../workbook/workbook';
import { HEAD_FILL, INPUT_FILL } from '../print/sheetFills';

/** How cells of a copy look, wherever it is written. */
const COPY_STYLES: Readonly<Record<CopiedLooks, CellStyle>> = {
  title: { bold: true },
  heading: { bold: true, fill: HEAD_FILL },
  kept: { fill: INPUT_FILL },
  text: { wrap: true },
};

/** About what one character takes, in points. */
const CHARACTER = 5.5;
const ROWS_A_CHANGE = 500;

/** Runs of equal things in a row, as blocks. */
function runs<T>(sheet: CopiedSheet, of: (cell: CopiedCell) => T | undefined): (readonly [T, Block])[] {
  return sheet.cells.flatMap((line, down) => {
    const found: [T, Block][] = [];
    line.forEach((cell, across) => {
      const what = of(cell);
      const last = found.at(-1);
      const column = sheet.column + across;
      if (what === undefined) return;
      if (last && last[0] === what && last[1].column + last[1].columns === column) {
        last[1] = { ...last[1], columns: last[1].columns + 1 };
      } else found.push([what, { row: sheet.row + down, column, rows: 1, columns: 1 }]);
    });
    return found;
  });
}

/** Blocks of the same columns one below the other, joined. */
function joined<T>(found: readonly (readonly [T, Block])[]): (readonly [T, Block])[] {
  const open = new Map<string, [T, Block]>();
  const done: [T, Block][] = [];
  for (const [what, block] of found) {
    const key = `${block.column} ${block.columns}`;
    const above = open.get(key);
    if (above && above[0] === what && above[1].row + above[1].rows === block.row)
      above[1] = { ...above[1], rows: above[1].rows + 1 };
    else {
      const next: [T, Block] = [what, block];
      open.set(key, next);
      done.push(next);
    }
  }
  return done;
}

const formulaOf = ({ formula, value }: CopiedCell): string => formula ?? (typeof value === 'object' ? '=NA()' : '');

function valueChanges(sheet: CopiedSheet): Change[] {
  const columns = sheet.cells[0]?.length ?? 0;
  const changes: Change[] = [];
  for (let first = 0; first < sheet.cells.length; first += ROWS_A_CHANGE) {
    const lines = sheet.cells.slice(first, first + ROWS_A_CHANGE);
    const values = lines.map(line =>
      line.map(cell => {
        if (formulaOf(cell) !== '' || typeof cell.value === 'object') return '';
        return typeof cell.value === 'string' ? sheetText(cell.value) : cell.value;
      }),
    );
    const block = { row: sheet.row + first, column: sheet.column, rows: lines.length, columns };
    changes.push({ kind: 'values', at: { sheet: sheet.name, address: addressOf(block) }, values });
  }
  return changes;
}

/** Formulas cell by cell in runs, so that the values beside them are not written over. */
function formulaChanges(sheet: CopiedSheet): Change[] {
  return joined(runs(sheet, cell => (formulaOf(cell) === '' ? undefined : true))).map(([, block]) => {
    const formulas = Array.from({ length: block.rows }, (_, down) =>
      sheet.cells[block.row - sheet.row + down]!.slice(
        block.column - sheet.column,
        block.column - sheet.column + block.columns,
      ).map(formulaOf),
    );
    return { kind: 'formulas', at: { sheet: sheet.name, address: addressOf(block) }, formulas };
  });
}

/** A text with digits, or one that reads like a truth value, is written into a cell for text: hosts make dates and numbers of the others. */
function formatOf(cell: CopiedCell): string | undefined {
  const mayBeTaken = typeof cell.value === 'string' && formulaOf(cell) === '' && /\d|^\s*(?:true|false)\s*$/i.test(cell.value);
  if (mayBeTaken && cell.format === 'General') return '@';
  return cell.format === 'General' ? undefined : cell.format;
}

function sheetChanges(sheet: CopiedSheet): Change[] {
  const at = (block: Block) => ({ sheet: sheet.name, address: addressOf(block) });
  const formats = joined(runs(sheet, formatOf));
  const styles = joined(runs(sheet, ({ looks }) => looks));
  return [
    { kind: 'addSheet', sheet: sheet.name },
    ...sheet.widths.map((width, column): Change => {
      const style = { columnWidth: Math.round(width * CHARACTER) };
      return { kind: 'style', at: at({ row: 0, column, rows: 1, columns: 1 }), style };
    }),
    ...formats.map(([numberFormat, block]): Change => ({ kind: 'format', at: at(block), numberFormat })),
    ...valueChanges(sheet),
    ...formulaChanges(sheet),
    ...styles.map(([looks, block]): Change => ({ kind: 'style', at: at(block), style: COPY_STYLES[looks] })),
  ];
}

/** A copy as new sheets of the workbook that is open; merged cells, and what is hidden, cannot be written so. */
export function copyChanges(copy: CopiedWorkbook): readonly Change[] {
  return copy.sheets.flatMap(sheetChanges);
}
