import { readHeadings, type Headings } from '../../../core/catalogue/headings';
import type { ReadRow } from '../../../core/catalogue/readRows';
import { catalogueTables, type TableName } from '../../../core/catalogue/tables/catalogueTables';
import type { CopiedCell } from '../../../workbook/copiedWorkbook';
import type { CatalogueTable } from '../../catalogue/workbookCatalogue';
import type { WorkbookCell } from '../workbookCell';
import { fixedAddress, referenceText } from '../references';
import type { AddedCells } from './addedCells';

type Value = string | number;

/** A row that the copy's table has besides those of the workbook. */
export type AddedRow = Readonly<Record<string, Value | undefined>>;

/**
 * One table of the catalogue on its sheet of the copy: its columns as look-ups read them. A column whose cells are not what the catalogue
 * read from them (numbers as text, another unit, blanks around a name) gets a column beside the table that is.
 */
export class PartsTable {
  private readonly headings: Headings;
  private readonly columns = new Map<string, string | undefined>();
  /** Zero-based row of the sheet. */
  private readonly firstRow: number;
  private readonly lastRow: number;

  constructor(
    readonly name: TableName,
    private readonly table: CatalogueTable,
    private readonly rows: readonly ReadRow[],
    private readonly added: readonly AddedRow[],
    private readonly sheet: AddedCells,
  ) {
    const { raw, content } = table;
    this.headings = readHeadings(catalogueTables[name], raw);
    this.firstRow = content.row + this.headings.row + 1;
    const ownLast = content.row + content.values.length - 1;
    const free = sheet.freeRow(ownLast + 1);
    this.lastRow = added.length > 0 ? free + added.length - 1 : Math.max(ownLast, this.firstRow);
    added.forEach((row, index) => this.addRow(free + index, row));
    if (added.length > 0) sheet.takeRows(free, added.length);
    this.addedFrom = free;
  }

  private readonly addedFrom: number;

  get headingRow(): number {
    return this.firstRow - 1;
  }

  private place(row: number, column: number): WorkbookCell {
    return { sheet: this.table.at.sheet, row, column };
  }

  private ownColumn(field: string): number | undefined {
    const found = this.headings.columns.find(({ key }) => key === field);
    return found && this.table.content.column + found.index;
  }

  /** Row of the sheet of a row that was read. */
  sheetRow({ row }: ReadRow): number {
    return this.table.content.row + row - 1;
  }

  /** Good rows with the row of the sheet that they stand on. */
  get goodRows(): readonly { readonly row: number; readonly values: Readonly<Record<string, unknown>> }[] {
    return this.rows
      .filter(({ problems }) => problems.length === 0)
      .map(row => ({ row: this.sheetRow(row), values: row.values }));
  }

  get addedRows(): readonly { readonly row: number; readonly values: AddedRow }[] {
    return this.added.map((values, index) => ({ row: this.addedFrom + index, values }));
  }

  private addRow(row: number, values: AddedRow): void {
    for (const { key, index } of this.headings.columns) {
      const value = values[key];
      if (value !== undefined) this.sheet.put(row, this.table.content.column + index, { value, format: 'General' });
    }
  }

  private rawAt(row: number, column: number): unknown {
    const { content } = this.table;
    return content.values[row - content.row]?.[column - content.column] ?? '';
  }

  private formulaAt(row: number, column: number): string {
    const { content } = this.table;
    return content.formulas[row - content.row]?.[column - content.column] ?? '';
  }

  private range(column: number): string {
    const rows = this.lastRow - this.firstRow + 1;
    return referenceText(this.sheet.nameInCopy, fixedAddress({ row: this.firstRow, column, rows, columns: 1 }));
  }

  /** A column's cells are what was read from them. A text that only has blanks around it is written without them. */
  private isAsRead(field: string, column: number): boolean {
    const trimmed: [WorkbookCell, CopiedCell][] = [];
    for (const { row, values } of this.goodRows) {
      const raw = this.rawAt(row, column);
      const value = values[field] ?? '';
      if (raw === value) continue;
      if (typeof raw !== 'string' || typeof value !== 'string' || raw.trim() !== value || this.formulaAt(row, column) !== '')
        return false;
      trimmed.push([this.place(row, column), { value, format: 'General' }]);
    }
    for (const [{ row, column: c }, cell] of trimmed) this.sheet.put(row, c, cell);
    return true;
  }

  /**
   * The range of a field, for formulas: `Hoses!$E$2:$E$49`.
   * @returns undefined where no row states it
   */
  field(field: string): string | undefined {
    if (!this.columns.has(field)) this.columns.set(field, this.makeField(field));
    return this.columns.get(field);
  }

  private makeField(field: string): string | undefined {
    const rows = [...this.goodRows, ...this.addedRows];
    if (rows.every(({ values }) => values[field] === undefined)) return undefined;
    const own = this.ownColumn(field);
    if (own !== undefined && this.isAsRead(field, own)) return this.range(own);
    // Under a heading of another unit the added rows would be wrong.
    if (own !== undefined) for (const { row } of this.addedRows) this.sheet.put(row, own, { value: '', format: 'General' });
    const { heading } = (catalogueTables[this.name].fields as Record<string, { heading: string }>)[field]!;
    return this.helper(
      `${heading}, as read`,
      rows.flatMap(({ row, values }) => {
        const value = values[field];
        return value === undefined ? [] : [{ row, cell: { value: value as Value, format: 'General' } }];
      }),
    );
  }

  /** A column beside the table. */
  helper(heading: string, cells: readonly { readonly row: number; readonly cell: CopiedCell }[]): string {
    const column = this.sheet.newColumn();
    this.sheet.put(this.headingRow, column, { value: heading, format: 'General', looks: 'heading' });
    for (const { row, cell } of cells) this.sheet.put(row, column, cell);
    return this.range(column);
  }

  /** A cell of a field in a row, for the formulas of helper columns: `A2`; undefined where it is not what was read, or is folded by TRIM. */
  ownCell(field: string, row: number): string | undefined {
    const column = this.ownColumn(field);
    if (column === undefined || !this.field(field) || row > this.table.content.row + this.table.content.values.length - 1)
      return undefined;
    if (this.range(column) !== this.field(field)) return undefined;
    const text = String(this.rawAt(row, column));
    return /[^\S ]| {2,}/.test(text.trim()) ? undefined : fixedAddress({ row, column, rows: 1, columns: 1 }).replace(/\$/g, '');
  }

  /** The cell of a field of one row, for formulas elsewhere. */
  cellOf(field: string, row: number): string | undefined {
    const range = this.field(field);
    const column = range && /\$([A-Z]+)\$\d+(?::|$)/.exec(range.slice(range.lastIndexOf('!') + 1))?.[1];
    return column ? referenceText(this.sheet.nameInCopy, `$${column}$${row + 1}`) : undefined;
  }
}
