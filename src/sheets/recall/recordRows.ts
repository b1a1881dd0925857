import { nameOfCell } from '../../cells/sheetCell';
import { momentNumber } from '../../core/units/sheetDate';
import { hostBlocks } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import { pieceKey } from '../pieces/piece';
import { findTables } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { columnsByRole, type RoleList } from '../table/tableColumns';
import type { RecalledPiece } from './recallPieces';
import type { RecallRequest } from './recallRequest';
import { RECORDS_SHEET } from '../table/recordsSheet';

type RecordRole = 'piece' | 'assembly' | 'order' | 'hoseLot' | 'fittingLot' | 'caliper' | 'gauge' | 'date' | 'die';
const ROLES: RoleList<RecordRole> = [
  ['hoseLot', 'hoseLot'],
  ['fittingLot', 'fittingLot'],
  ['caliper', 'caliper'],
  ['gauge', 'gauge'],
  ['piece', 'piece'],
  ['assembly', 'assembly'],
  ['order', 'order'],
  ['die', 'die'],
  ['date', 'date'],
];

/** A row of the sheet of records. */
export interface RecordRow {
  readonly sheet: string;
  /** As the sheet shows it. */
  readonly row: number;
  readonly piece: string;
  readonly assembly: string;
  readonly order: string;
  readonly lots: readonly string[];
  readonly gauges: readonly string[];
  readonly date: number | undefined;
}

/** All rows of the sheet of records, hidden ones too; [] where there is none. */
export async function recordRows(workbook: Workbook): Promise<readonly RecordRow[]> {
  const sheet = (await workbook.sheets()).find(name => name.toLowerCase() === RECORDS_SHEET.toLowerCase());
  const used = sheet === undefined ? undefined : await workbook.used(sheet);
  if (sheet === undefined || !used) return [];
  const [tables, layout] = await Promise.all([workbook.tables(sheet), workbook.layout(sheet)]);
  const cells = new SheetCells(used, layout);
  return findTables(cells, hostBlocks(tables)).flatMap(table => {
    const columns = columnsByRole(table, ROLES);
    if (columns.piece === undefined && columns.assembly === undefined) return [];
    const rows = Array.from({ length: table.block.rows - 1 }, (_, index) => table.block.row + 1 + index);
    return [...rows, ...table.below].map((row): RecordRow => {
      const shown = (role: RecordRole) => (columns[role] === undefined ? '' : cells.shown(row, columns[role]));
      const name = (role: RecordRole) => nameOfCell(shown(role));
      const day = shown('date');
      return {
        sheet,
        row: row + 1,
        piece: name('piece'),
        assembly: name('assembly'),
        order: name('order'),
        lots: [name('hoseLot'), name('fittingLot')].filter(Boolean),
        gauges: [name('caliper'), name('gauge'), name('die')].filter(Boolean),
        date: typeof day === 'object' || typeof day === 'boolean' || day === '' ? undefined : momentNumber(day),
      };
    });
  });
}

/** Numbers by which a record may name a piece: its own, or that of its assembly and which piece of it. */
const namesOf = ({ piece, assembly }: RecordRow): readonly string[] =>
  [piece, assembly && `${assembly}-${piece}`, assembly].filter(Boolean).map(pieceKey);

function isAsked(record: RecordRow, request: RecallRequest): boolean {
  if (request.by === 'lot') return record.lots.some(lot => pieceKey(lot) === pieceKey(request.lot));
  if (request.by === 'gauge') {
    const isSince = request.since === undefined || record.date === undefined || record.date >= request.since;
    return isSince && record.gauges.some(name => pieceKey(name) === pieceKey(request.name));
  }
  return record.date !== undefined && record.date >= request.from && record.date < request.to + 1;
}

/** The records of recalled pieces, and those that name the lot, gauge or day themselves. */
export function recallRecords(
  records: readonly RecordRow[],
  pieces: readonly RecalledPiece[],
  request: RecallRequest,
): readonly RecordRow[] {
  const numbers = new Set(pieces.filter(({ kind }) => kind === 'hit').map(({ piece }) => pieceKey(piece.piece)));
  return records.filter(record => isAsked(record, request) || namesOf(record).some(name => numbers.has(name)));
}
