import type { CopiedCell, CopiedSheet } from '../../workbook/copiedWorkbook';
import type { CellValue } from '../../workbook/workbook';
import type { WorkbookCell, CellSet } from './workbookCell';
import { blankCell, valueForCopy } from './copiedCell';
import type { SourceSheet } from './sourceSheet';

/** Longer texts run over the cells beside them. */
const WIDEST = 42;
const NARROWEST = 6;
const NUMBER_WIDTH = 11;

function widthOf(value: CellValue): number {
  if (value === '') return 0;
  if (typeof value === 'string') return value.length > WIDEST ? 0 : value.length + 1;
  return NUMBER_WIDTH;
}

/** Widths of the columns from A on that show their texts. */
export function widthsOf({ column, cells }: Pick<CopiedSheet, 'column' | 'cells'>): number[] {
  const columns = cells[0]?.length ?? 0;
  const widths = Array.from({ length: columns }, (_, c) =>
    Math.max(NARROWEST, ...cells.map(line => Math.min(WIDEST, widthOf(line[c]!.value)))),
  );
  return [...Array<number>(column).fill(NARROWEST), ...widths];
}

/** What becomes of the cells of a sheet. */
export interface CopyRules {
  readonly leftOut: CellSet;
  /** Cells of hidden rows and columns are copied empty. */
  readonly withoutHidden: boolean;
  /** The cell as it stands in the copy, where it is not simply its value. */
  cell?(place: WorkbookCell): CopiedCell | undefined;
}

/** A sheet of the workbook as the copy has it. */
export function copiedSheet(name: string, source: SourceSheet, rules: CopyRules): CopiedSheet {
  const { used, layout } = source.cells;
  const headingRows = new Set(source.tables.map(({ block }) => block.row));
  const cellOf = (row: number, column: number): CopiedCell => {
    const place = { sheet: used.sheet, row, column };
    const format = source.cells.format(row, column) || 'General';
    const isUnseen = source.cells.isHidden(row) || source.cells.isColumnHidden(column);
    if (rules.leftOut.has(place) || (rules.withoutHidden && isUnseen)) return blankCell();
    const own = rules.cell?.(place);
    if (own) return own;
    const value = valueForCopy(source.cells.value(row, column), source.cells.formula(row, column));
    if (headingRows.has(row) && typeof value === 'string' && value !== '') return { value, format, looks: 'heading' };
    return row === used.row && typeof value === 'string' ? { value, format, looks: 'title' } : { value, format };
  };
  const cells = used.values.map((line, down) => line.map((_, across) => cellOf(used.row + down, used.column + across)));
  const part = { row: used.row, column: used.column, cells };
  const hidden = {
    hiddenRows: [...layout.hiddenRows],
    hiddenColumns: [...layout.hiddenColumns],
    isHidden: layout.isHidden,
  };
  return { name, ...part, ...hidden, merges: layout.merges, widths: widthsOf(part) };
}
