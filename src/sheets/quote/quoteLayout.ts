import { columnLetters, sheetInFormula } from '../../workbook/a1';

/** Columns that are printed, and those of the working, which have a sheet of their own. */
export type QuoteColumn =
  | 'line'
  | 'label'
  | 'hose'
  | 'fittingA'
  | 'fittingB'
  | 'overall'
  | 'guard'
  | 'temperature'
  | 'fluid'
  | 'pressure'
  | 'rating'
  | 'quantity'
  | 'each'
  | 'lineTotal'
  | 'note'
  | 'check'
  | 'hoseCost'
  | 'fittingsCost'
  | 'labourCost'
  | 'assemblyCost'
  | 'guardCost'
  | 'cost'
  | 'earned'
  | 'exact'
  | 'missing';

/** Settings of the quote, in cells above the working. */
export type QuoteSetting =
  | 'customerClass'
  | 'margin'
  | 'markupHose'
  | 'markupFittings'
  | 'markupGuards'
  | 'markupLabour'
  | 'roundTo'
  | 'least'
  | 'callOut'
  | 'minimumCharge'
  | 'validDays';

/** Words by which a quote is read again. */
export const SETTING_LABELS: Readonly<Record<QuoteSetting, string>> = {
  customerClass: 'Customer class',
  margin: 'Margin',
  markupHose: 'Markup on hose',
  markupFittings: 'Markup on fittings',
  markupGuards: 'Markup on guards',
  markupLabour: 'Markup on labour',
  roundTo: 'Prices rounded up to',
  least: 'Least price each',
  callOut: 'Call-out',
  minimumCharge: 'Minimum charge',
  validDays: 'Valid for (days)',
};

/** Columns of a quote that are printed, but for the note. */
export const PRINTED = [
  'line',
  'label',
  'hose',
  'fittingA',
  'fittingB',
  'overall',
  'guard',
  'temperature',
  'fluid',
  'pressure',
  'rating',
  'quantity',
  'each',
  'lineTotal',
] as const;
const WORKING = [
  'check',
  'hoseCost',
  'fittingsCost',
  'labourCost',
  'assemblyCost',
  'guardCost',
  'cost',
  'earned',
  'exact',
  'missing',
] as const;
/** Rows of the head: title, customer, reference, date, validity, catalogue, statements, breaks. */
export const HEADING_ROW = 11;
export const BREAK_ROW = HEADING_ROW - 1;

/** The two sheets of a quote: what may be printed, and cost and margin, which stay here. */
export type QuoteSide = 'quote' | 'costs';
export type QuoteSheets = Readonly<Record<QuoteSide, string>>;

/** First column of the working: line, hose and price stand before it. */
const FIRST_WORKING = 3;

/** Where everything of a quote stands; a line has the same row on both sheets. Rows and columns count from 0. */
export class QuoteLayout {
  private readonly columns: ReadonlyMap<QuoteColumn, number>;
  readonly settings: readonly QuoteSetting[];
  readonly firstRow = HEADING_ROW + 1;

  constructor(
    readonly sheets: QuoteSheets,
    readonly lines: number,
    readonly breaks: number,
    /** Columns that no line fills. */
    without: readonly QuoteColumn[],
    method: 'margin' | 'markup',
  ) {
    const printed = PRINTED.filter(column => !without.includes(column));
    const noteColumn = printed.length + breaks;
    const working = WORKING.map((column, index) => [column, FIRST_WORKING + index] as const);
    this.columns = new Map<QuoteColumn, number>([
      ...printed.map((column, index) => [column, index] as const),
      ['note', noteColumn],
      ...working,
    ]);
    const earned = ['customerClass', 'margin'] as const;
    const marked = ['markupHose', 'markupFittings', 'markupGuards', 'markupLabour'] as const;
    const terms = ['roundTo', 'least', 'callOut', 'minimumCharge', 'validDays'] as const;
    this.settings = [...(method === 'margin' ? earned : marked), ...terms];
  }

  get lastRow(): number {
    return this.firstRow + this.lines - 1;
  }

  has(column: QuoteColumn): boolean {
    return this.columns.has(column);
  }

  column(column: QuoteColumn): number {
    return this.columns.get(column)!;
  }

  /** Column of the price at a break. */
  breakColumn(index: number): number {
    return this.column('lineTotal') + 1 + index;
  }

  /** Column of the labour at a break, in the working. */
  breakLabourColumn(index: number): number {
    return this.column('missing') + 1 + index;
  }

  /** Last column of the working. */
  get lastWorking(): number {
    return this.column('missing') + this.breaks;
  }

  sideOf(column: QuoteColumn): QuoteSide {
    return (WORKING as readonly QuoteColumn[]).includes(column) ? 'costs' : 'quote';
  }

  /** A reference as a formula of one sheet names a cell of either. */
  private from(on: QuoteSide, of: QuoteSide, reference: string): string {
    return on === of ? reference : `${sheetInFormula(this.sheets[of])}!${reference}`;
  }

  /** `$C13`, or `'Quote costs'!$C13` from the other sheet: the column stays, the row is the line's. */
  cell(on: QuoteSide, column: QuoteColumn, row: number): string {
    return this.from(on, this.sideOf(column), `$${columnLetters(this.column(column))}${row + 1}`);
  }

  /** Cell of the labour at a break. */
  breakLabour(on: QuoteSide, index: number, row: number): string {
    return this.from(on, 'costs', `$${columnLetters(this.breakLabourColumn(index))}${row + 1}`);
  }

  /** Cell of a break's quantity. */
  breakQuantity(on: QuoteSide, index: number): string {
    return this.from(on, 'quote', fixed(BREAK_ROW, this.breakColumn(index)));
  }

  /** A cell of the quote's own sheet, as either names it. */
  quoteCell(on: QuoteSide, row: number, column: number): string {
    return this.from(on, 'quote', fixed(row, column));
  }

  /** `$J$13:$J$20`: a column over all lines, as its own sheet names it. */
  lineRange(column: QuoteColumn): string {
    const letters = columnLetters(this.column(column));
    return `$${letters}$${this.firstRow + 1}:$${letters}$${this.lastRow + 1}`;
  }

  settingRow(setting: QuoteSetting): number {
    return 1 + this.settings.indexOf(setting);
  }

  /** Column of the settings' values; their labels stand in the column before. */
  readonly settingColumn = 1;

  /** `$T$2`: the cell of the working that says which rates are missing. */
  get missingRates(): string {
    return fixed(1, this.column('missing'));
  }

  /** `$B$4`: the cell of a setting. */
  setting(on: QuoteSide, setting: QuoteSetting): string {
    return this.from(on, 'costs', fixed(this.settingRow(setting), this.settingColumn));
  }
}

/** `$C$5` of row and column from 0. */
export function fixed(row: number, column: number): string {
  return `$${columnLetters(column)}$${row + 1}`;
}
