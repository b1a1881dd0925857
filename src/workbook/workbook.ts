import type { Block } from './a1';

/** A range of one sheet. */
export interface RangeAddress {
  readonly sheet: string;
  /** A1 style without sheet and dollars: `B2:F20`, `C7`. */
  readonly address: string;
}

/** A table in the host's own sense; its range holds the heading row and the rows. */
export interface HostTable extends RangeAddress {
  /** A row of totals, which is no row of the table, stands below the range. */
  readonly hasTotals?: boolean;
  /** As formulas call it: `Hoses`, in `Hoses[#All]`. */
  readonly name: string;
}

/** An error value as a cell shows it, with the sentence behind it where the host knows it. */
export interface ErrorValue {
  readonly error: string;
  readonly sentence?: string | undefined;
}

/** Value of one cell; blank is "". */
export type CellValue = string | number | boolean | ErrorValue;

/** What stands in a range. The three tables have the range's shape. */
export interface RangeContent extends RangeAddress {
  /** Zero-based row and column of the first cell. */
  readonly row: number;
  readonly column: number;
  readonly values: readonly (readonly CellValue[])[];
  /** Formula with its `=`, or "" where the cell holds none. */
  readonly formulas: readonly (readonly string[])[];
  /** Number formats as the host writes them: `General`, `0.00`, `dd/mm/yyyy`, `@`. */
  readonly formats: readonly (readonly string[])[];
}

/** How a sheet is laid out, beyond what its cells hold. */
export interface SheetLayout {
  /** Zero-based rows of the sheet that are hidden, by hand or by a filter; outside the used part of the sheet none is told. */
  readonly hiddenRows: ReadonlySet<number>;
  /** Zero-based columns of the used part that are hidden. */
  readonly hiddenColumns: ReadonlySet<number>;
  /** The whole sheet is hidden. */
  readonly isHidden: boolean;
  /** Merged cells, zero-based blocks; the first cell of each holds what is shown in all of it. */
  readonly merges: readonly Block[];
}

/**
 * One change of a workbook. Several are written in one batch, as one undo step where the host allows it.
 * A picture is square and lies in the upper left of its block, after all other changes; the try-out sheet has none and leaves it out.
 */
export type Change =
  | { readonly kind: 'addSheet'; readonly sheet: string }
  /** Takes a sheet away with all that stands on it: for sheets that the pane itself has just added. */
  | { readonly kind: 'removeSheet'; readonly sheet: string }
  | { readonly kind: 'values'; readonly at: RangeAddress; readonly values: readonly (readonly (string | number | boolean)[])[] }
  | { readonly kind: 'formulas'; readonly at: RangeAddress; readonly formulas: readonly (readonly string[])[] }
  | { readonly kind: 'format'; readonly at: RangeAddress; readonly numberFormat: string }
  | { readonly kind: 'style'; readonly at: RangeAddress; readonly style: CellStyle }
  | { readonly kind: 'page'; readonly sheet: string; readonly page: PageSetup }
  | { readonly kind: 'chart'; readonly at: RangeAddress; readonly chart: ChartSpec }
  | { readonly kind: 'picture'; readonly at: RangeAddress; readonly svg: string; readonly alt: string }
  | { readonly kind: 'name'; readonly name: string; readonly refersTo: RangeAddress };

/** What stood in cells when changes to them were planned: nothing, or what the changes that take them back would put there. */
export type Expected = 'blank' | readonly Change[];

/** A chart of the host's own over the block it is put at: points and lines over x and y. The try-out sheet has none and leaves it out. */
export interface ChartSpec {
  readonly title: string;
  /** Title of the axis along the bottom. */
  readonly across?: string;
  /** Title of the axis on the left. */
  readonly up?: string;
  readonly series: readonly ChartSeries[];
}

/** One series of a chart; its cells lie on the chart's own sheet, x and y in ranges of one shape. */
export interface ChartSeries {
  readonly name: string;
  readonly x: string;
  readonly y: string;
  readonly looks: 'points' | 'line' | 'points and line';
}

/** How a sheet is printed; a host that cannot say so to its printer keeps it for the saved file, or ignores it. */
export interface PageSetup {
  readonly orientation?: 'portrait' | 'landscape';
  /** A1 style, without sheet. */
  readonly printArea?: string;
  /** Rows printed on top of every page: `4:4`. */
  readonly titleRows?: string;
  /** Columns printed on the left of every page: `A:A`. */
  readonly titleColumns?: string;
  /** Numbers of the rows, as the sheet shows them, that begin a new page. */
  readonly breaksBefore?: readonly number[];
  /** Scaled so that all columns fit on one page; not together with breaks, which hosts then leave out. */
  readonly fitWidth?: boolean;
  /** Scale in per cent: 10 … 400. */
  readonly scale?: number;
  /** Margin on all four sides, in points; as the host has it where left out. */
  readonly margin?: number;
}

/** Looks of cells that the pane writes; what is left out stays as it is. */
export interface CellStyle {
  readonly bold?: boolean;
  readonly fill?: string;
  readonly color?: string;
  readonly wrap?: boolean;
  readonly columnWidth?: number;
  readonly rowHeight?: number;
  readonly fontSize?: number;
  /** `all`: a thin line round every cell; `bottom`: under every cell. */
  readonly border?: 'all' | 'bottom';
}

/** The workbook that is open in the host. The task pane and the functions reach a host through this port only. */
export interface Workbook {
  /** Which host this is. */
  readonly host: 'excel' | 'try-out';
  /** Names of the sheets, in order. */
  sheets(): Promise<readonly string[]>;
  /** The selected range, clipped to the used part of its sheet (at least the active cell). */
  selection(): Promise<RangeContent>;
  /** Calls the listener whenever the selection or the selected cells' content changes; returns how to stop that. */
  onSelection(listener: () => void): () => void;
  /** Content of several ranges in one batch, each clipped to the used part of its sheet (at least its first cell). Throws where a sheet or range does not exist. */
  read(ranges: readonly RangeAddress[]): Promise<readonly RangeContent[]>;
  /** The used part of a sheet; undefined where the sheet is empty. */
  used(sheet: string): Promise<RangeContent | undefined>;
  /** The sheet's tables in the host's own sense (Excel tables), with heading row; [] where the host knows none. */
  tables(sheet: string): Promise<readonly HostTable[]>;
  /** Whether a sheet is hidden, its hidden rows and columns, its merged cells. Throws where there is no such sheet. */
  layout(sheet: string): Promise<SheetLayout>;
  /** The cell whose formula spills into this one; undefined where the cell is not filled from elsewhere. */
  spillParent(cell: RangeAddress): Promise<RangeAddress | undefined>;
  /** Workbook-scoped defined names that refer to ranges. */
  names(): Promise<readonly { readonly name: string; readonly at: RangeAddress }[]>;
  /**
   * Writes all changes in one batch; a second writing waits for the first. What can be known beforehand (shapes, missing or protected
   * sheets, a cell that no longer holds what was expected) is refused before anything is written. What Excel refuses while it writes is put
   * back: cells and names get what they held, sheets that came with the batch go again, and the error names what could not be put back.
   * @param expected what stood in the cells that are written when the changes were planned; not looked at where left out
   */
  write(changes: readonly Change[], expected?: Expected): Promise<void>;
  /** A small text that is remembered with the workbook, in its file; undefined where none was remembered under that key. */
  recall(key: string): Promise<string | undefined>;
  /** Remembers a small text with the workbook, under a key of ours (`headings.Jobs`); undefined forgets it. No step of undo. */
  remember(key: string, text: string | undefined): Promise<void>;
  /** Selects a range and shows it. */
  select(at: RangeAddress): Promise<void>;
  /** Enters again all formulas that contain a function of ours and show #NAME?; gives how many. */
  reenterUnknownNames(): Promise<number>;
}
