import type { Block } from '../../workbook/a1';
import type { HostBlock } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import { catalogueState, type CatalogueState } from '../catalogue/catalogueState';
import type { FoundTable } from '../table/findTables';
import { selectedTable } from '../table/selectedTable';
import type { SheetCells } from '../table/sheetCells';
import { tableAnswers, type TableAnswers, type TableKind } from '../table/tableAnswers';
import type { TableQuestion } from '../table/tableQuestion';
import { lineRows } from './lineRows';
import type { TableUnits } from './offer';
import type { CrimpFacts } from './crimpFacts';
import { kindOfTable, readColumns, type Columns } from './tableColumnsOf';
import { tableUnits } from './tableUnits';

/** A table as the columns of ours are planned for it. */
export interface TableView {
  readonly cells: SheetCells;
  readonly table: FoundTable;
  readonly columns: Columns;
  /** What its crimps are judged by besides columns. */
  readonly crimps?: CrimpFacts | undefined;
  readonly hostTables: readonly HostBlock[];
  readonly catalogue: CatalogueState;
}

/** What the view works on. */
export type ColumnsRead =
  | { readonly status: 'loading' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'none' }
  | ({
      readonly status: 'ready';
      /** Under which its corrections are remembered. */
      readonly kind: TableKind;
      readonly units: TableUnits;
      readonly questions: readonly TableQuestion[];
      /** The same as long as it is the same table, columns added to it or taken away again. */
      readonly id: string;
    } & TableView);

const idOf = ({ sheet, block, headings }: FoundTable) => `${sheet}!${block.row},${block.column} ${headings.join('|')}`;

/** A view that was read anew, known again where its table only grew or shrank at the right since the last one. */
export function sameTable(found: ColumnsRead, before: ColumnsRead): ColumnsRead {
  if (found.status !== 'ready' || before.status !== 'ready') return found;
  const [a, b] = [found.table, before.table];
  const shared = Math.min(a.headings.length, b.headings.length);
  const starts = a.sheet === b.sheet && a.block.row === b.block.row && a.block.column === b.block.column;
  const same = starts && a.headings.slice(0, shared).join('|') === b.headings.slice(0, shared).join('|');
  return same ? { ...found, id: before.id } : found;
}

/** What a table is to our functions. */
export function tableView(
  cells: SheetCells,
  table: FoundTable,
  catalogue: CatalogueState,
  answers: TableAnswers,
  hostTables: readonly HostBlock[] = [],
): TableView & { readonly units: TableUnits; readonly questions: readonly TableQuestion[] } {
  const { columns, crimps, questions: asked } = readColumns(cells, table, catalogue, answers, hostTables);
  const { block } = table;
  // Totals and remarks below the lines are none of our columns' business.
  const rows = table.hostTable ? block.rows : lineRows({ cells, table, columns }).last - block.row + 1;
  const lines = { ...table, block: { ...block, rows } };
  const { units, questions } = tableUnits(cells, lines, columns, answers, catalogue);
  return { cells, table: lines, columns, crimps, hostTables, catalogue, units, questions: [...questions, ...asked] };
}

/** Reads the table around the selection; with `stayOn`, the table around that block instead. */
export async function columnsView(workbook: Workbook, stayOn?: { sheet: string; block: Block }): Promise<ColumnsRead> {
  const [found, catalogue] = await Promise.all([selectedTable(workbook, stayOn), catalogueState(workbook)]);
  if (!found) return { status: 'none' };
  const { cells, table, hostTables } = found;
  const kind = kindOfTable(cells, table, (await tableAnswers(workbook, 'crimps', table.sheet)).role);
  const answers = await tableAnswers(workbook, kind, table.sheet);
  return { status: 'ready', ...tableView(cells, table, catalogue, answers, hostTables), kind, id: idOf(table) };
}
