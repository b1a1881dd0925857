import type { Catalogue } from '../../core/catalogue/catalogue';
import { overlap, type Block } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { RangeContent, SheetLayout, Workbook } from '../../workbook/workbook';
import { currentCatalogue } from '../catalogue/currentCatalogue';
import { findTables, tableAt, type FoundTable } from '../table/findTables';
import type { KnownParts } from '../table/nameColumns';
import { SheetCells } from '../table/sheetCells';
import { NO_ANSWERS, tableAnswers, type TableAnswers } from '../table/tableAnswers';
import { goesOnBelow } from './crimpCells';
import { crimpTable, readingsIn, type CrimpTable } from './crimpTable';
import { namesKnown } from '../catalogue/namesKnown';

/** Which rows of a sheet are meant. */
export interface CrimpChoice {
  readonly sheet: string;
  readonly block: Block;
}

/** A sheet with crimps, before its rows are read. */
export interface CrimpSheet {
  readonly sheet: string;
  readonly cells: SheetCells;
  /** Tables with readings, in order. */
  readonly tables: readonly CrimpTable[];
  /** The table that is meant; without readings where the sheet has none. */
  readonly own: CrimpTable | undefined;
  /** Rows that are selected, zero-based; undefined = all. */
  readonly chosen: ReadonlySet<number> | undefined;
  readonly catalogue: Catalogue | undefined;
  readonly answers: TableAnswers;
}

/** The block of filled cells around a cell, as far as whole rows and columns of it hold something. */
function blockAround(cells: SheetCells, { row, column }: Block): Block | undefined {
  const isFilled = (r: number, c: number) => !cells.isEmpty(r, c);
  if (!isFilled(row, column)) return undefined;
  let [top, bottom, left, right] = [row, row, column, column];
  while (left > 0 && isFilled(row, left - 1)) left -= 1;
  while (isFilled(row, right + 1)) right += 1;
  const hasAny = (r: number) => Array.from({ length: right - left + 1 }, (_, i) => left + i).some(c => isFilled(r, c));
  while (top > 0 && hasAny(top - 1)) top -= 1;
  while (hasAny(bottom + 1)) bottom += 1;
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** Bare numbers without headings: a table whose heading row lies, blank, above its first row. */
function withoutHeadings(cells: SheetCells, selected: Block): FoundTable | undefined {
  const block = blockAround(cells, selected);
  if (!block) return undefined;
  const columns = Array.from({ length: block.columns }, (_, i) => block.column + i);
  if (!columns.some(column => typeof cells.value(block.row, column) === 'number')) return undefined;
  return {
    sheet: cells.sheet,
    block: { ...block, row: block.row - 1, rows: block.rows + 1 },
    headings: columns.map(() => ''),
    hostTable: false,
    below: [],
  };
}

/** The names of a catalogue, so that columns can be told by what stands in them. */
const partsOf = (catalogue: Catalogue | undefined): KnownParts => ({
  isHose: namesKnown(catalogue?.index.hoses),
  isFitting: namesKnown(catalogue?.index.fittings),
  isMachine: namesKnown(catalogue?.index.machines),
});

/** A table with the rows below it that go on with it, so that a selection among them means it. */
export function reach({ table, reader, ...columns }: CrimpTable): Block {
  const last = goesOnBelow(reader.cells, table, columns).at(-1);
  const { block } = table;
  return last === undefined ? block : { ...block, rows: last - block.row + 1 };
}

/** What a sheet of crimps is made of. */
export interface SheetContent {
  readonly used: RangeContent;
  readonly layout?: SheetLayout | undefined;
  readonly hostTables?: Parameters<typeof findTables>[1];
  readonly answers?: TableAnswers;
  readonly catalogue?: Catalogue | undefined;
}

/** The tables of crimps of a sheet, and the one that a selection means. */
export function crimpSheetOf(content: SheetContent, selected: Block): CrimpSheet {
  const { used, layout, hostTables = [], answers = NO_ANSWERS, catalogue } = content;
  const cells = new SheetCells(used, layout);
  const parts = partsOf(catalogue);
  const proposed = catalogue?.units.diameter;
  const found = findTables(cells, hostTables, answers.role);
  const all = found.map(table => crimpTable(cells, table, answers, parts, [], proposed));
  const withReadings = all.filter(each => readingsIn(each) > 0);
  // What stands above a table may belong to a table of crimps above that one.
  const tables = withReadings.map(({ table }) => {
    const others = withReadings.filter(each => each.table !== table).map(each => each.table);
    return crimpTable(cells, found[all.findIndex(each => each.table === table)]!, answers, parts, others, proposed);
  });
  const under = tables.find(each => overlap(reach(each), selected));
  const bareTable = under ? undefined : withoutHeadings(cells, selected);
  const isApart = bareTable && found.every(({ block }) => !overlap(block, bareTable.block));
  const bare = isApart ? crimpTable(cells, bareTable, answers, parts, [], proposed) : undefined;
  const own =
    under ??
    (bare && readingsIn(bare) > 0 ? bare : undefined) ??
    tables.find(
      ({ table }) =>
        table.block ===
        tableAt(
          tables.map(each => each.table),
          selected,
        )?.block,
    ) ??
    tables[0] ??
    all.find(({ table }) => overlap(table.block, selected)) ??
    all[0];
  const rows = Array.from({ length: selected.rows }, (_, index) => selected.row + index);
  const shown = bare && own === bare ? [bare] : tables;
  const isIn = (row: number) => shown.some(each => row > each.table.block.row && row < reach(each).row + reach(each).rows);
  const chosen = selected.rows > 1 ? rows.filter(isIn) : [];
  return {
    sheet: used.sheet,
    cells,
    tables: shown,
    own,
    chosen: chosen.length > 1 ? new Set(chosen) : undefined,
    catalogue,
    answers,
  };
}

/** The rows that are selected now. */
async function selectedCrimps(workbook: Workbook): Promise<CrimpChoice> {
  const { sheet, row, column, values } = await workbook.selection();
  return { sheet, block: { row, column, rows: values.length, columns: values[0]?.length ?? 1 } };
}

/** Reads a sheet of crimps: the one of the selection where none is named; undefined where it is blank. */
export async function readCrimpSheet(workbook: Workbook, choice?: CrimpChoice): Promise<CrimpSheet | undefined> {
  const { sheet, block } = choice ?? (await selectedCrimps(workbook));
  const used = await workbook.used(sheet);
  if (!used) return undefined;
  const [tables, layout, answers, catalogue] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    tableAnswers(workbook, 'crimps', sheet),
    currentCatalogue(workbook),
  ]);
  return crimpSheetOf({ used, layout, hostTables: hostBlocks(tables), answers, catalogue }, block);
}
