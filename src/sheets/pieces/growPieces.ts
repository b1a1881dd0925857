import { addressOf, type Block } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { printedWidth } from '../print/printedWidth';
import type { WrittenCell } from '../print/sheetWriter';
import type { PieceBook } from './pieceBook';
import {
  crimpVerdictFormula,
  lengthVerdictFormula,
  unitOnNewSheet,
  writtenIn,
  type PieceCells,
  type PiecePlaces,
  type UnitOfColumn,
} from './pieceCells';
import { pieceColumns, type PieceColumn, type PieceRole, type PieceUnits } from './pieceColumns';
import type { Pieces } from './readPieces';

/** Rows that were added to the sheet, and how they are taken back. */
export interface Grown {
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
  /** First new row, as the sheet shows it. */
  readonly row: number;
}

interface Target {
  readonly sheet: string;
  readonly places: PiecePlaces;
  /** Zero-based first new row. */
  readonly first: number;
  readonly unitOf: UnitOfColumn;
}

const block = (row: number, column: number, rows = 1, columns = 1): Block => ({ row, column, rows, columns });

function verdict(role: PieceRole, cells: PieceCells, { places, unitOf }: Target, row: number): string {
  if (role === 'lengthVerdict') return (cells.shortest && cells.longest && lengthVerdictFormula(places, row)) || '';
  const end = role === 'verdictA' ? 'A' : 'B';
  return (cells[`target${end}`] && cells[`tolerance${end}`] && crimpVerdictFormula(places, row, end, cells, unitOf)) || '';
}

/** Columns that people may add: they are read, not written. */
const SPREADS = ['largestSpread', 'largestSpreadA', 'largestSpreadB'] as const satisfies readonly PieceRole[];

const VERDICTS: ReadonlySet<PieceRole> = new Set(['verdictA', 'verdictB', 'lengthVerdict']);

/** The formulas of the verdicts, a block a column. */
function formulas(rows: readonly PieceCells[], target: Target): Change[] {
  return [...target.places].flatMap(([role, column]): Change[] => {
    if (!VERDICTS.has(role)) return [];
    const found = rows.map((cells, index) => [verdict(role, cells, target, target.first + index)]);
    if (found.every(([formula]) => formula === '')) return [];
    return [{ kind: 'formulas', at: at(target, block(target.first, column, rows.length)), formulas: found }];
  });
}

const at = ({ sheet }: Pick<Target, 'sheet'>, where: Block) => ({ sheet, address: addressOf(where) });

/** Formats first: a sheet would make a date of `1-1`. */
const formats = (columns: readonly PieceColumn[], target: Target, rows: number): Change[] =>
  columns.flatMap(({ role, format }): Change[] =>
    format ? [{ kind: 'format', at: at(target, block(target.first, target.places.get(role)!, rows)), numberFormat: format }] : [],
  );

function onNewSheet(book: PieceBook, rows: readonly PieceCells[], units: PieceUnits): Grown {
  const columns = pieceColumns(units);
  const places: PiecePlaces = new Map(columns.map(({ role }, index) => [role, index]));
  const unitOf = (role: PieceRole) => unitOnNewSheet(role, units);
  const target: Target = { sheet: book.sheet, places, first: 1, unitOf };
  const head = at(target, block(0, 0, 1, columns.length));
  const body = at(target, block(1, 0, rows.length, columns.length));
  const values = rows.map(cells => columns.map(({ role }): WrittenCell => writtenIn(role, cells[role], unitOf(role))));
  const blank = [columns, ...rows].map(() => columns.map(() => ''));
  return {
    row: 2,
    changes: [
      ...(book.exists ? [] : [{ kind: 'addSheet' as const, sheet: book.sheet }]),
      ...columns.map(({ width }, index): Change => ({
        kind: 'style',
        at: at(target, block(0, index)),
        style: { columnWidth: width },
      })),
      { kind: 'values', at: head, values: [columns.map(({ heading }) => heading)] },
      { kind: 'style', at: head, style: { bold: true, wrap: true, border: 'bottom' } },
      { kind: 'page', sheet: book.sheet, page: { titleRows: '1:1', ...printedWidth(columns.map(({ width }) => width)) } },
      ...formats(columns, target, rows.length),
      { kind: 'values', at: body, values },
      ...formulas(rows, target),
    ],
    undo: book.exists
      ? [{ kind: 'values', at: at(target, block(0, 0, rows.length + 1, columns.length)), values: blank }]
      : [{ kind: 'removeSheet', sheet: book.sheet }],
  };
}

/** The first filled row below the pieces, zero-based: rows grow to there only. */
function hindrance({ table: { reader, table } }: Pieces): number | undefined {
  const { cells } = reader;
  const columns = Array.from({ length: table.block.columns }, (_, index) => table.block.column + index);
  for (let row = table.block.row + table.block.rows; row <= cells.lastRow; row += 1) {
    if (columns.some(column => !cells.isEmpty(row, column))) return row;
  }
  return undefined;
}

function below(pieces: Pieces, rows: readonly PieceCells[], units: PieceUnits): Grown {
  const { sheet, table } = pieces;
  const { block: own } = table.table;
  const stands = hindrance(pieces);
  if (stands !== undefined) {
    throw new Error(`Sheet "${sheet}": row ${stands + 1} below the pieces is filled. Move it, so that the pieces can grow.`);
  }
  const columns = pieceColumns(units);
  const missing = columns.filter(({ role }) => table.columns[role] === undefined && rows.some(cells => fillsColumn(role, cells)));
  const next = own.column + own.columns;
  const { cells } = table.reader;
  const isFree = missing.every((_, index) =>
    Array.from({ length: own.rows }, (__, row) => own.row + row).every(row => cells.isEmpty(row, next + index)),
  );
  if (!isFree) {
    throw new Error(
      `Sheet "${sheet}": the columns to the right of the pieces are filled; ${missing[0]!.heading} is missing there.`,
    );
  }
  const places = new Map<PieceRole, number>(missing.map(({ role }, index) => [role, next + index]));
  for (const role of [...columns.map(each => each.role), ...SPREADS])
    if (table.columns[role] !== undefined) places.set(role, table.columns[role]);
  const present = columns.filter(({ role }) => places.has(role));
  const unitOf = (role: PieceRole) =>
    table.columns[role] === undefined ? unitOnNewSheet(role, units) : table.reader.unitOf(role)?.symbol;
  const target: Target = { sheet, places, first: own.row + own.rows, unitOf };
  const written = present.filter(({ role }) => rows.some(cells => cells[role] !== undefined));
  const ofColumn = ({ role }: PieceColumn) => at(target, block(target.first, places.get(role)!, rows.length));
  const headings = missing.map(({ heading }, index) => ({ heading, where: at(target, block(own.row, next + index)) }));
  return {
    row: target.first + 1,
    changes: [
      ...headings.flatMap(({ heading, where }): Change[] => [
        { kind: 'values', at: where, values: [[heading]] },
        { kind: 'style', at: where, style: { bold: true, wrap: true } },
      ]),
      ...formats(present, target, rows.length),
      ...written.map((column): Change => ({
        kind: 'values',
        at: ofColumn(column),
        values: rows.map(each => [writtenIn(column.role, each[column.role], unitOf(column.role))]),
      })),
      ...formulas(rows, target),
    ],
    undo: [
      ...present.map((column): Change => ({ kind: 'values', at: ofColumn(column), values: rows.map(() => ['']) })),
      ...headings.map(({ where }): Change => ({ kind: 'values', at: where, values: [['']] })),
    ],
  };
}

function fillsColumn(role: PieceRole, cells: PieceCells): boolean {
  if (role === 'lengthVerdict') return cells.shortest !== undefined;
  if (role === 'verdictA' || role.startsWith('reading') || role === 'verdictB') {
    return cells[role.endsWith('A') ? 'targetA' : 'targetB'] !== undefined;
  }
  return cells[role] !== undefined;
}

/**
 * Adds rows below the pieces, under their headings in whatever order and unit; a sheet that is not there gets the headings first, columns
 * that are missing are added on the right. Nothing that stands is written over.
 * @throws Error with a sentence where there is no room
 */
export function growPieces(book: PieceBook, rows: readonly PieceCells[], units: PieceUnits): Grown {
  if (rows.length === 0) return { changes: [], undo: [], row: 0 };
  return book.pieces ? below(book.pieces, rows, units) : onNewSheet(book, rows, units);
}
