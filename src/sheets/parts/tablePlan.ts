import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { Change, RangeAddress } from '../../workbook/workbook';

/** How one table gets into the workbook. */
export interface TablePlan {
  readonly table: TableName;
  readonly sheet: string;
  /** The sheet comes new. */
  readonly isNew: boolean;
  /** Nothing where the table stands as it should. */
  readonly changes: readonly Change[];
  /** What puts back what stood there. */
  readonly restoring: readonly Change[];
  /** The range that CATALOGUE reads afterwards, with room to append. */
  readonly reads: RangeAddress;
  readonly overwrites: readonly string[];
  readonly message: readonly string[];
}

/** Name of a table as its sheet is called. */
export const title = (table: TableName) => catalogueTables[table].sheet;
export const rowCount = (rows: number) => `${rows} ${rows === 1 ? 'row' : 'rows'}`;
