import type { Block } from '../../workbook/a1';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';

/** A sheet that holds something. */
export interface SourceSheet {
  readonly cells: SheetCells;
  readonly tables: readonly FoundTable[];
}

/** The sheets of a workbook, and what their formulas stand on. */
export interface SourceSheets {
  readonly sheets: ReadonlyMap<string, SourceSheet>;
  readonly catalogue: WorkbookCatalogue | undefined;
  /** Blocks that the tables of functions spill into, by `row column sheet` of their formula. */
  readonly spills: ReadonlyMap<string, Block>;
}
