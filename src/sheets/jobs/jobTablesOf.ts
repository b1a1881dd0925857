import type { Catalogue } from '../../core/catalogue/catalogue';
import { addressOf, overlap } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue, type WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { findTables, tableAt } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { tableAnswers, type TableAnswers } from '../table/tableAnswers';
import { tableRows, type LeftOutRow } from '../table/tableRows';
import { isStock, jobTable, type JobTable } from './jobTable';
import { partsKnown } from '../catalogue/namesKnown';
import type { JobChoice } from './jobChoice';

export const KEYS = ['hose', 'cutLength', 'overall', 'quantity', 'fittingA', 'fittingB'] as const;

/** The workbook's catalogue as somebody has just read it: reading it means looking through all sheets. */
export type CatalogueRead = Pick<WorkbookCatalogue, 'catalogue'>;

export interface JobTablesRead {
  readonly cells: SheetCells;
  readonly tables: readonly JobTable[];
  readonly catalogue: Catalogue | undefined;
  readonly said: TableAnswers;
}

/** The job tables of a sheet, in order. */
export async function jobTablesOf(
  workbook: Workbook,
  sheet: string,
  read: CatalogueRead | undefined,
): Promise<JobTablesRead | undefined> {
  const used = await workbook.used(sheet);
  if (!used) return undefined;
  const [tables, layout, catalogue, said] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    read ? read.catalogue : workbookCatalogue(workbook).then(found => found?.catalogue),
    tableAnswers(workbook, 'jobs', sheet),
  ]);
  const cells = new SheetCells(used, layout);
  const parts = partsKnown(catalogue?.index);
  const proposals = catalogue && { length: catalogue.units.length, pressure: catalogue.units.pressure };
  const found = findTables(cells, hostBlocks(tables), said.role);
  const jobTables = found.flatMap(table => jobTable(cells, table, said, parts, proposals) ?? []);
  return { cells, tables: jobTables, catalogue, said };
}

/** The tables that a choice means: those it touches, else the one around it. */
export function tablesMeant({ tables }: JobTablesRead, { block, isChoice }: JobChoice, takesBelow: boolean): readonly JobTable[] {
  const beside = tables.filter(({ table }) => overlap(table.block, { ...block, column: table.block.column, columns: 1 }));
  const under = tables.filter(({ table }) => overlap(table.block, block));
  const touched = under.length > 0 ? under : beside;
  if (isChoice && touched.length > 0) return touched;
  const at = tableAt(
    tables.map(({ table }) => table),
    block,
  );
  const own = tables.find(({ table }) => table === at) ?? tables[0];
  if (!own) return [];
  // Groups by day: each has headings and columns of its own.
  return takesBelow ? tables.filter(table => table === own || !isStock(table)) : [own];
}

/** Lines of other job tables on the sheet that were not meant: they are told. */
export function otherTables(source: JobTablesRead, meant: readonly JobTable[], { isChoice }: JobChoice): readonly LeftOutRow[] {
  if (isChoice) return [];
  return source.tables
    .filter(each => !meant.includes(each) && !isStock(each))
    .flatMap(({ table, columns }) =>
      tableRows(source.cells, table, {
        name: columns.hose,
        keys: KEYS.flatMap(role => columns[role] ?? []),
        takesHidden: true,
      }).flatMap(({ row, kind }): LeftOutRow[] =>
        kind === 'line' ? [{ row: row + 1, reason: 'below', sentence: `in the table ${addressOf(table.block)}` }] : [],
      ),
    );
}
