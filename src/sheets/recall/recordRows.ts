import { nameOfCell } from '../../cells/sheetCell';
import { momentNumber, type DateOrders } from '../../core/units/sheetDate';
import { hostBlocks } from '../../workbook/hostTable';
import type { CellValue, Workbook } from '../../workbook/workbook';
import { columnDateOrders } from '../table/columnDateOrders';
import { findTables } from '../table/findTables';
import { listOfCell, namesIn } from '../table/namesInCell';
import { SheetCells } from '../table/sheetCells';
import { columnsByRole, type RoleList } from '../table/tableColumns';
import type { LotCell, Traces } from './recallFinding';
import { RECORDS_SHEET } from '../table/recordsSheet';

type RecordRole =
  | 'piece'
  | 'assembly'
  | 'order'
  | 'hose'
  | 'hoseLot'
  | 'fitting'
  | 'fittingLot'
  | 'ferruleLot'
  | 'caliper'
  | 'gauge'
  | 'crimpedOn'
  | 'date'
  | 'die';
const ROLES: RoleList<RecordRole> = [
  ['hoseLot', 'hoseLot'],
  ['fittingLot', 'fittingLot'],
  ['ferruleLot', 'ferruleLot'],
  ['hose', 'hose'],
  ['fitting', 'fitting'],
  ['caliper', 'caliper'],
  ['gauge', 'gauge'],
  ['piece', 'piece'],
  ['assembly', 'assembly'],
  ['order', 'order'],
  ['die', 'die'],
  // The day of the crimp, not the day on which the record was written.
  ['crimpedOn', 'crimpedOn'],
  ['date', 'date'],
];

/** A row of the sheet of records. */
export interface RecordRow extends Traces {
  readonly sheet: string;
  /** As the sheet shows it. */
  readonly row: number;
  readonly piece: string;
  readonly assembly: string;
  readonly order: string;
}

function dayOf(cell: CellValue, orders: DateOrders): number | undefined {
  return typeof cell === 'object' || typeof cell === 'boolean' || cell === '' ? undefined : momentNumber(cell, orders);
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
    const ordersOf = (role: RecordRole) => (columns[role] === undefined ? {} : columnDateOrders(cells, table, columns[role]));
    const orders = { date: ordersOf('date'), crimpedOn: ordersOf('crimpedOn') };
    const rows = Array.from({ length: table.block.rows - 1 }, (_, index) => table.block.row + 1 + index);
    return [...rows, ...table.below].map((row): RecordRow => {
      const has = (role: RecordRole) => columns[role] !== undefined;
      const shown = (role: RecordRole) => (columns[role] === undefined ? '' : cells.shown(row, columns[role]));
      const name = (role: RecordRole) => nameOfCell(shown(role));
      const list = (role: RecordRole) => listOfCell(shown(role));
      const lots: readonly LotCell[] = [
        { of: 'hose', label: 'hose lot', part: name('hose'), lot: list('hoseLot') },
        { of: 'fitting', label: 'coupling lot', part: name('fitting'), lot: list('fittingLot') },
        ...(has('ferruleLot') ? [{ of: 'ferrule' as const, label: 'ferrule lot', part: '', lot: list('ferruleLot') }] : []),
      ];
      const dies = namesIn(list('die'));
      const written = dayOf(shown('date'), orders.date);
      return {
        sheet,
        row: row + 1,
        piece: name('piece'),
        assembly: name('assembly'),
        order: name('order'),
        lots,
        gauges: [...namesIn(list('caliper')), ...namesIn(list('gauge'))],
        dies: dies.length > 0 ? dies : [''],
        isMeasured: true,
        isTested: true,
        isMade: true,
        day: has('crimpedOn') ? dayOf(shown('crimpedOn'), orders.crimpedOn) : written,
        notAfter: written,
      };
    });
  });
}
