import { overlap, type Block } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import { columnsOfRun, overlaps, runsOf, oneLine, widest, type Run } from './cellRuns';
import { beginsTable, isSecondHeading, joined, vocabulary } from './headingRow';
import { leaveSettings, openOwn, stacked, takeRow, withUnheaded, type OpenTable } from './openTable';
import type { SheetCells } from './sheetCells';
import type { HeadingCorrections } from './headingCorrections';

/** Someone's table. Rows and columns are zero-based numbers of the sheet. */
export interface FoundTable {
  readonly sheet: string;
  /** The heading row on top, then all rows down to the last. */
  readonly block: Block;
  readonly headings: readonly string[];
  /** It is a table in the host's own sense. */
  readonly hostTable: boolean;
  /** Filled rows below the table's end that look like lines of it: they are not among its rows. */
  readonly below: readonly number[];
}

function ownTable(cells: SheetCells, { row, column, rows, columns }: HostBlock, below: readonly number[]): FoundTable {
  const headings = columnsOfRun({ first: column, last: column + columns - 1 }).map(at => oneLine(cells.value(row, at)));
  return { sheet: cells.sheet, block: { row, column, rows, columns }, headings, hostTable: true, below };
}

/**
 * All tables of a sheet, in order of their heading rows. A title block above is no part of one. A table ends at two wholly blank rows or
 * at another row of headings, which begins a table with its own columns; a host's own table has its own range.
 * @param said what headings somebody explained by hand: they are known like the words of the vocabulary
 */
export function findTables(
  cells: SheetCells,
  hostTables: readonly HostBlock[] = [],
  said: HeadingCorrections = new Map(),
): readonly FoundTable[] {
  const lexicon = vocabulary(said);
  const own = hostTables.map(openOwn);
  const taken = hostTables.map(wholeTable);
  const isTaken = (row: number, run: Run) =>
    taken.some(block => overlap(block, { row, column: run.first, rows: 1, columns: run.last - run.first + 1 }));
  const found: OpenTable[] = [];
  let open: OpenTable[] = [...own];
  for (let row = cells.used.row; row <= cells.lastRow; row += 1) {
    const runs = joined(cells, row, runsOf(cells, row), lexicon).filter(run => !isTaken(row, run));
    const both = stacked(cells, row, open, runs, lexicon);
    if (both) {
      open = [...open.filter(({ run }) => !overlaps(run, both.run)), both];
      found.push(both);
      continue;
    }
    for (const run of runs) {
      const over = open.filter(table => table.top < row && overlaps(table.run, run));
      const begins = over.some(table => !table.isClosed && row - table.bottom <= 2)
        ? isSecondHeading(cells, row, widest([run, ...over.map(table => table.run)]), lexicon)
        : beginsTable(cells, row, run, lexicon) && (over.length === 0 || isSecondHeading(cells, row, run, lexicon));
      if (!begins) continue;
      for (const table of over) if (!table.own) leaveSettings(cells, row, table);
      open = open.filter(table => !over.includes(table));
      const table: OpenTable = { top: row, run, bottom: row, isClosed: false, below: [] };
      open.push(table);
      found.push(table);
    }
    for (const table of open) if (table.top < row && !(table.own && row <= table.bottom)) takeRow(cells, row, table);
  }
  const full = found.filter(({ top, bottom }) => bottom > top);
  const tables = full.map((table): FoundTable => {
    const { top, bottom, below, headings: both } = table;
    const run = withUnheaded(cells, table, full);
    const headings = columnsOfRun(run).map((column, at) => both?.[at] ?? oneLine(cells.shown(top, column)));
    const block = { row: top, column: run.first, rows: bottom - top + 1, columns: run.last - run.first + 1 };
    return { sheet: cells.sheet, block, headings, hostTable: false, below };
  });
  const ownFound = own.map(({ own: place, below }) => ownTable(cells, place!, below));
  return [...ownFound, ...tables].sort((a, b) => a.block.row - b.block.row || a.block.column - b.block.column);
}

/** Rows by which a selected cell may lie below a table and still mean it. */
const NEAR = 2;

/**
 * The table that a selection means: the one it lies in, else the one just above it, else the next one below; of a sheet with one table
 * only, that one.
 */
export function tableAt(tables: readonly FoundTable[], selected: Block): FoundTable | undefined {
  const own = tables.find(({ block }) => overlap(block, selected));
  if (own) return own;
  const beside = (block: Block) => selected.column >= block.column && selected.column < block.column + block.columns;
  const above = tables.filter(({ block }) => {
    const gap = selected.row - (block.row + block.rows - 1);
    return gap > 0 && gap <= NEAR && beside(block);
  });
  if (above.length > 0) return above.at(-1);
  return tables.find(({ block }) => block.row > selected.row) ?? (tables.length === 1 ? tables[0] : undefined);
}
