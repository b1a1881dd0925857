import { addressOf, blockOf, overlap } from '../../src/workbook/a1';
import { spilledResult } from '../../src/workbook/spilledResult';
import { changedMeanwhile, firstUnexpected } from '../../src/workbook/expectedCells';
import { RefusedWriting } from '../../src/workbook/refusedWriting';
import { sheetOfChange } from '../../src/workbook/sheetOfChange';
import type { CellValue, Change, Expected, RangeAddress, RangeContent, SheetLayout, Workbook } from '../../src/workbook/workbook';

/** One cell of a fake sheet: a value, or a formula with the value it shows. */
export type FakeCell = CellValue | { readonly formula: string; readonly value: CellValue; readonly spill?: string };

interface FakeSheet {
  readonly rows: readonly (readonly FakeCell[])[];
}

/** What a fake workbook has besides its cells; all of it by sheet, but for the texts. */
export interface FakeDetails {
  /** Zero-based numbers of hidden rows. */
  readonly hiddenRows?: Readonly<Record<string, readonly number[]>>;
  /** Zero-based numbers of hidden columns. */
  readonly hiddenColumns?: Readonly<Record<string, readonly number[]>>;
  /** Sheets that are hidden. */
  readonly hiddenSheets?: readonly string[];
  /** Addresses of merged cells: `A2:A4`. */
  readonly merges?: Readonly<Record<string, readonly string[]>>;
  /** Number formats by range: `{ Jobs: { 'B2:B9': 'dd/mm/yyyy' } }`; General elsewhere. */
  readonly formats?: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Sheets that are protected: a writing to one is refused. */
  readonly protectedSheets?: readonly string[];
  /** Texts remembered with the workbook, by key. */
  readonly remembered?: Readonly<Record<string, string>>;
}

const isFormula = (cell: FakeCell): cell is Extract<FakeCell, { formula: string }> =>
  typeof cell === 'object' && 'formula' in cell;
const valueOf = (cell: FakeCell = ''): CellValue => (isFormula(cell) ? cell.value : cell);

const goneSentence = (sheet: string) =>
  `Sheet "${sheet}" is no longer there: it was renamed or deleted. Look at the sheets, then try again.`;

/** A workbook in memory behind the Workbook port: strict about sheets that do not exist, clips ranges as the port says, keeps what is written. */
export function fakeWorkbook(
  standing: Readonly<Record<string, FakeSheet['rows']>>,
  selected: RangeAddress,
  details: FakeDetails = {},
) {
  const remembered = new Map(Object.entries(details.remembered ?? {}));
  /** Sheets that were written to, copied before the first change. */
  const changed: Record<string, FakeCell[][]> = {};
  const rowsOf = (sheet: string): FakeSheet['rows'] | undefined => changed[sheet] ?? standing[sheet];
  const written: (readonly Change[])[] = [];
  const listeners = new Set<() => void>();
  let selection = selected;

  const formats = new Map(
    Object.entries(details.formats ?? {}).map(([sheet, own]) => [
      sheet,
      Object.entries(own).map(([address, format]) => ({ block: blockOf(address)!, format })),
    ]),
  );
  const formatOf = (sheet: string, row: number, column: number): string => {
    const cell = { row, column, rows: 1, columns: 1 };
    return formats.get(sheet)?.find(({ block }) => overlap(block, cell))?.format ?? 'General';
  };

  const layoutOf = (sheet: string): SheetLayout => {
    if (!rowsOf(sheet)) throw new Error(`there is no sheet ${sheet}`);
    const merges = (details.merges?.[sheet] ?? []).map(address => blockOf(address)!);
    return {
      hiddenRows: new Set(details.hiddenRows?.[sheet]),
      hiddenColumns: new Set(details.hiddenColumns?.[sheet]),
      isHidden: details.hiddenSheets?.includes(sheet) ?? false,
      merges,
    };
  };

  const contentOf = ({ sheet, address }: RangeAddress): RangeContent => {
    const rows = rowsOf(sheet);
    const asked = blockOf(address);
    if (!rows || !asked) throw new Error(`no range ${sheet}!${address}`);
    const used = { row: 0, column: 0, rows: rows.length, columns: Math.max(1, ...rows.map(row => row.length)) };
    const block = overlap(asked, used) ?? { row: asked.row, column: asked.column, rows: 1, columns: 1 };
    const table = <T>(pick: (cell: FakeCell, row: number, column: number) => T): T[][] =>
      Array.from({ length: block.rows }, (_, r) =>
        Array.from({ length: block.columns }, (__, c) =>
          pick(rows[block.row + r]?.[block.column + c] ?? '', block.row + r, block.column + c),
        ),
      );
    return {
      sheet,
      address: addressOf(block),
      row: block.row,
      column: block.column,
      values: table(valueOf),
      formulas: table(cell => (isFormula(cell) ? cell.formula : '')),
      formats: table((_, row, column) => formatOf(sheet, row, column)),
    };
  };

  const spillParent = ({ sheet, address }: RangeAddress): RangeAddress | undefined => {
    const cell = blockOf(address)!;
    for (const [r, row] of rowsOf(sheet)!.entries()) {
      for (const [c, from] of row.entries()) {
        const spill = isFormula(from) && from.spill ? blockOf(from.spill) : undefined;
        const isParent = r === cell.row && c === cell.column;
        if (spill && !isParent && overlap(spill, cell))
          return { sheet, address: addressOf({ row: r, column: c, rows: 1, columns: 1 }) };
      }
    }
    return undefined;
  };

  const put = ({ sheet, address }: RangeAddress, cells: readonly (readonly FakeCell[])[]) => {
    const block = blockOf(address);
    if (!rowsOf(sheet) || !block) throw new Error(`no range ${sheet}!${address}`);
    const rows = (changed[sheet] ??= rowsOf(sheet)!.map(row => [...row]));
    cells.forEach((line, r) =>
      line.forEach((cell, c) => {
        while (rows.length <= block.row + r) rows.push([]);
        const row = rows[block.row + r]!;
        while (row.length <= block.column + c) row.push('');
        row[block.column + c] = cell;
      }),
    );
  };

  const apply = (change: Change) => {
    if (change.kind === 'addSheet') {
      if (rowsOf(change.sheet)) throw new Error(`There is already a sheet "${change.sheet}".`);
      changed[change.sheet] = [];
    } else if (change.kind === 'removeSheet') {
      // Only what was added is ever taken away.
      if (standing[change.sheet] || !changed[change.sheet]) throw new Error(`Sheet "${change.sheet}" was not added.`);
      delete changed[change.sheet];
    } else if (change.kind === 'values') put(change.at, change.values);
    else if (change.kind === 'formulas') {
      put(
        change.at,
        change.formulas.map(row => row.map(formula => (formula === '' ? '' : { formula, value: '' }))),
      );
    }
  };

  /** As Excel does: a formula whose results would fall on filled or merged cells shows #SPILL!; else it fills them. */
  const spill = ({ sheet, address }: RangeAddress) => {
    const at = blockOf(address)!;
    const rows = changed[sheet]!;
    const merged = layoutOf(sheet).merges;
    for (let r = at.row; r < at.row + at.rows; r++) {
      for (let c = at.column; c < at.column + at.columns; c++) {
        const cell = rows[r]?.[c] ?? '';
        const result = isFormula(cell) ? spilledResult(cell.formula) : undefined;
        if (!isFormula(cell) || !result || result.rows * result.columns.length === 1) continue;
        const block = { row: r, column: c, rows: result.rows, columns: result.columns.length };
        const cells = Array.from({ length: block.rows * block.columns }, (_, i) => [
          r + Math.floor(i / block.columns),
          c + (i % block.columns),
        ]).slice(1);
        const isBlocked =
          cells.some(([row, column]) => (rows[row!]?.[column!] ?? '') !== '') || merged.some(each => overlap(each, block));
        rows[r]![c] = isBlocked ? { ...cell, value: { error: '#SPILL!' } } : { ...cell, spill: addressOf(block) };
      }
    }
  };

  /** Refuses as Excel's port does, before anything is written. */
  const refuse = (changes: readonly Change[], expected: Expected | undefined) => {
    const added = new Set(changes.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : [])));
    const standingSheets = new Set(changes.map(sheetOfChange).filter(sheet => !added.has(sheet)));
    const reason =
      [...standingSheets].map(sheet => (rowsOf(sheet) ? protectedSentence(sheet) : goneSentence(sheet))).find(Boolean) ??
      changedSentence(changes, expected, standingSheets);
    if (reason) throw new RefusedWriting(reason, 'Nothing was written.');
  };
  const protectedSentence = (sheet: string) =>
    details.protectedSheets?.includes(sheet) &&
    `Sheet "${sheet}" is protected: lift the protection (Review, Unprotect Sheet), then try again.`;
  const changedSentence = (changes: readonly Change[], expected: Expected | undefined, sheets: ReadonlySet<string>) => {
    const standingOn = new Map([...sheets].map(sheet => [sheet, contentOf({ sheet, address: 'A1:XFD1048576' })]));
    const other = expected && firstUnexpected(changes, expected, standingOn);
    return other && changedMeanwhile(other);
  };

  const workbook: Workbook = {
    host: 'try-out',
    sheets: async () => [...new Set([...Object.keys(standing), ...Object.keys(changed)])],
    selection: async () => contentOf(selection),
    onSelection: listener => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    read: async ranges => ranges.map(contentOf),
    used: async sheet => (rowsOf(sheet)?.length ? contentOf({ sheet, address: 'A1:XFD1048576' }) : undefined),
    tables: async () => [],
    layout: async sheet => layoutOf(sheet),
    spillParent: async cell => spillParent(cell),
    names: async () => [],
    write: async (changes, expected) => {
      refuse(changes, expected);
      written.push(changes);
      changes.forEach(apply);
      for (const change of changes) if (change.kind === 'formulas') spill(change.at);
    },
    recall: async key => remembered.get(key),
    remember: async (key, text) => {
      if (text === undefined) remembered.delete(key);
      else remembered.set(key, text);
    },
    select: async at => {
      selection = at;
      for (const listener of listeners) listener();
    },
    reenterUnknownNames: async () => 2,
  };
  /** Puts a cell into the workbook, as somebody else would who works in it. */
  const edit = (sheet: string, address: string, cell: FakeCell) => put({ sheet, address }, [[cell]]);
  return { workbook, written, listeners, remembered, edit };
}
