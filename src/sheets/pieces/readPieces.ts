import { nameOfCell } from '../../cells/sheetCell';
import { addressOf } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { findTables, type FoundTable } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { tableAnswers, type TableAnswers } from '../table/tableAnswers';
import type { TableQuestion } from '../table/tableQuestion';
import { tableRows, type LeftOutRow, type ReadReport } from '../table/tableRows';
import { unchangedRows } from '../table/unchangedRows';
import { pieceKey, type Piece } from './piece';
import { pieceTable, type PieceTable } from './pieceTable';
import { readPiece } from './readPiece';

export const PIECES_SHEET = 'Pieces';

/** The sheet Pieces as it was read. */
export interface Pieces {
  readonly sheet: string;
  readonly pieces: readonly Piece[];
  readonly report: ReadReport;
  readonly questions: readonly TableQuestion[];
  readonly table: PieceTable;
}

/** A number is one piece's: rows that share one are told, each with the others. */
function withTwins(pieces: readonly Piece[]): readonly Piece[] {
  const rows = new Map<string, number[]>();
  for (const { piece, row } of pieces) {
    const own = rows.get(pieceKey(piece));
    if (own) own.push(row);
    else rows.set(pieceKey(piece), [row]);
  }
  if (rows.size === pieces.length) return pieces;
  return pieces.map(each => {
    const others = each.piece === '' ? [] : rows.get(pieceKey(each.piece))!.filter(row => row !== each.row);
    if (others.length === 0) return each;
    const sentence = `piece ${each.piece} is in row ${others.join(', ')}, too: give each piece a number of its own`;
    return { ...each, problems: [...each.problems, sentence] };
  });
}

const unchanged = unchangedRows<Piece>();

/** A host's own table is written on below its range: rows that follow it without a gap belong to it. */
function withRowsBelow(cells: SheetCells, found: FoundTable): FoundTable {
  if (!found.hostTable) return found;
  const { block } = found;
  const isFilled = (row: number) =>
    Array.from({ length: block.columns }, (_, index) => block.column + index).some(column => !cells.isEmpty(row, column));
  let rows = block.rows;
  while (block.row + rows <= cells.lastRow && isFilled(block.row + rows)) rows += 1;
  return { ...found, block: { ...block, rows } };
}

/** Tables of a sheet that has headings only: nothing was made yet. */
const isHeadingsOnly = (cells: SheetCells) => cells.lastRow === cells.used.row;

function tablesOf(cells: SheetCells, blocks: ReturnType<typeof hostBlocks>, { role }: TableAnswers): readonly FoundTable[] {
  if (!isHeadingsOnly(cells)) return findTables(cells, blocks, role).map(found => withRowsBelow(cells, found));
  const { row, column, values } = cells.used;
  const headings = values[0]!.map(cell => nameOfCell(cell));
  return [
    { sheet: cells.sheet, block: { row, column, rows: 1, columns: headings.length }, headings, hostTable: false, below: [] },
  ];
}

/** Name of the sheet Pieces, in whatever case; undefined where the workbook has none. */
export async function piecesSheet(workbook: Workbook): Promise<string | undefined> {
  return (await workbook.sheets()).find(sheet => sheet.toLowerCase() === PIECES_SHEET.toLowerCase());
}

/**
 * Reads the sheet Pieces: every row of it, hidden ones too.
 * @returns undefined where there is no such sheet, or it holds something else
 */
export async function readPieces(workbook: Workbook): Promise<Pieces | undefined> {
  const sheet = await piecesSheet(workbook);
  const used = sheet === undefined ? undefined : await workbook.used(sheet);
  return used && piecesOf(workbook, used);
}

/** The pieces of a sheet whose cells were read just now; undefined where it holds something else. */
export async function piecesOf(workbook: Workbook, used: RangeContent): Promise<Pieces | undefined> {
  const { sheet } = used;
  const [hostTables, layout, answers] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    tableAnswers(workbook, 'pieces', sheet),
  ]);
  const cells = new SheetCells(used, layout);
  const table = tablesOf(cells, hostBlocks(hostTables), answers)
    .flatMap(found => pieceTable(cells, found, answers) ?? [])
    .at(0);
  if (!table) return undefined;
  const keys = [table.columns.piece!, table.columns.hose!];
  const rowByRow = unchanged(cells, table.reader.known);
  const read: Piece[] = [];
  const leftOut: LeftOutRow[] = [];
  for (const { row, kind } of tableRows(cells, table.table, { name: table.columns.hose, keys, takesHidden: true })) {
    if (kind === 'line' || kind === 'below') read.push(rowByRow(row, '', () => readPiece(table, row)));
    else leftOut.push({ row: row + 1, reason: kind });
  }
  const pieces = withTwins(read);
  const problems = pieces.flatMap(({ row, problems: found }): LeftOutRow[] =>
    found.length === 0 ? [] : [{ row, reason: 'problem', sentence: found.join('; ') }],
  );
  const taken = pieces.map(({ row }) => row);
  const report = { sheet, tables: [addressOf(table.table.block)], taken, leftOut: [...leftOut, ...problems] };
  return { sheet, pieces, report, questions: table.reader.questions, table };
}
