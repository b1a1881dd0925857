import { addressOf, blockOf, overlap } from '../../src/host/a1';
import type { CellValue, Change, RangeAddress, RangeContent, Workbook } from '../../src/host/workbook';

/** One cell of a fake sheet: a value, or a formula with the value it shows. */
export type FakeCell = CellValue | { readonly formula: string; readonly value: CellValue; readonly spill?: string };

interface FakeSheet {
  readonly rows: readonly (readonly FakeCell[])[];
}

const isFormula = (cell: FakeCell): cell is Extract<FakeCell, { formula: string }> =>
  typeof cell === 'object' && 'formula' in cell;
const valueOf = (cell: FakeCell = ''): CellValue => (isFormula(cell) ? cell.value : cell);

/** A workbook in memory behind the Workbook port: strict about sheets that do not exist, and clipping ranges as the port says. */
export function fakeWorkbook(sheets: Readonly<Record<string, FakeSheet['rows']>>, selected: RangeAddress) {
  const written: (readonly Change[])[] = [];
  const listeners = new Set<() => void>();
  let selection = selected;

  const contentOf = ({ sheet, address }: RangeAddress): RangeContent => {
    const rows = sheets[sheet];
    const asked = blockOf(address);
    if (!rows || !asked) throw new Error(`no range ${sheet}!${address}`);
    const used = { row: 0, column: 0, rows: rows.length, columns: Math.max(1, ...rows.map(row => row.length)) };
    const block = overlap(asked, used) ?? { row: asked.row, column: asked.column, rows: 1, columns: 1 };
    const table = <T>(pick: (cell: FakeCell) => T): T[][] =>
      Array.from({ length: block.rows }, (_, r) =>
        Array.from({ length: block.columns }, (__, c) => pick(rows[block.row + r]?.[block.column + c] ?? '')),
      );
    return {
      sheet,
      address: addressOf(block),
      row: block.row,
      column: block.column,
      values: table(valueOf),
      formulas: table(cell => (isFormula(cell) ? cell.formula : '')),
      formats: table(() => 'General'),
    };
  };

  const spillParent = ({ sheet, address }: RangeAddress): RangeAddress | undefined => {
    const cell = blockOf(address)!;
    for (const [r, row] of sheets[sheet]!.entries()) {
      for (const [c, from] of row.entries()) {
        const spill = isFormula(from) && from.spill ? blockOf(from.spill) : undefined;
        const isParent = r === cell.row && c === cell.column;
        if (spill && !isParent && overlap(spill, cell))
          return { sheet, address: addressOf({ row: r, column: c, rows: 1, columns: 1 }) };
      }
    }
    return undefined;
  };

  const workbook: Workbook = {
    host: 'try-out',
    sheets: async () => Object.keys(sheets),
    selection: async () => contentOf(selection),
    onSelection: listener => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    read: async ranges => ranges.map(contentOf),
    used: async sheet => (sheets[sheet]?.length ? contentOf({ sheet, address: 'A1:XFD1048576' }) : undefined),
    tables: async () => [],
    spillParent: async cell => spillParent(cell),
    names: async () => [],
    write: async changes => void written.push(changes),
    select: async at => {
      selection = at;
      for (const listener of listeners) listener();
    },
    reenterUnknownNames: async () => 2,
  };
  return { workbook, written, listeners };
}
