import { countOfCell, measureOfCell, momentOfCell, nameOfCell, numberOfCell, type Measure } from '../../cells/sheetCell';
import type { DateOrders } from '../../core/units/sheetDate';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { MeasureUnit, Quantity } from '../../core/units/measureUnit';
import { addressOf, columnLetters } from '../../workbook/a1';
import type { CellValue } from '../../workbook/workbook';
import { isDitto } from './ditto';
import type { FoundTable } from './findTables';
import type { SheetCells } from './sheetCells';
import type { TableAnswers } from './tableAnswers';
import type { ColumnsByRole } from './tableColumns';
import { columnDateOrders } from './columnDateOrders';
import { refusePercent } from './refusePercent';
import type { TableQuestion } from './tableQuestion';
import type { MeasureRole } from './measureRole';
import { listOfCell } from './namesInCell';
import { ColumnFactsFinder, headingOfRole, type ColumnFacts } from './columnFacts';

/** What is known of one number besides its column. */
export interface CellReading {
  /** Instead of the role's own label. */
  readonly label?: string | undefined;
  /** Rows that one record covers, from this one on: cells merged over them are its own. */
  readonly rows?: number | undefined;
}

/** Roles of dates, whose rows are read by what others of their column say. */
const DATED = /^(?:date|checked|due)/;

/** Reads the rows of one table: names, numbers with their units, days. What the sheet does not say becomes a question. */
export class TableReader<Role extends string> {
  readonly questions: TableQuestion[];
  private readonly facts = new Map<Role, ColumnFacts>();
  private readonly orders = new Map<number, DateOrders>();

  constructor(
    readonly cells: SheetCells,
    readonly table: FoundTable,
    readonly columns: ColumnsByRole<Role>,
    private readonly measures: Readonly<Partial<Record<Role, MeasureRole>>>,
    answers: TableAnswers,
    /** Units that are proposed, never taken, where a heading names none. */
    proposals: Readonly<Partial<Record<Quantity, MeasureUnit>>> = {},
    /** Roles of plain numbers, whose commas are asked about too. */
    numbers: readonly Role[] = [],
    /** What a cell beside it adds to a name in a row: the size of a hose. */
    private readonly added: Readonly<Record<string, ((name: string, row: number) => string) | undefined>> = {},
  ) {
    const finder = new ColumnFactsFinder(cells, table, columns, measures, answers, proposals);
    this.questions = finder.questions;
    for (const role of Object.keys(measures) as Role[]) if (this.has(role)) this.facts.set(role, finder.factsOf(role));
    for (const role of numbers) if (this.has(role)) this.facts.set(role, finder.factsOfNumber(role));
  }

  has(role: Role): boolean {
    return this.columns[role] !== undefined;
  }

  heading(role: Role): string {
    return headingOfRole(this.table, this.columns, role);
  }

  /** Unit of a column: as its heading states, as the table's other columns do, or as somebody answered. */
  unitOf(role: Role): MeasureUnit | undefined {
    return this.facts.get(role)?.unit;
  }

  /** All that is known of the table besides its rows, as a text to compare. */
  get known(): string {
    const facts = [...this.facts].map(([role, { unit, comma }]) => [role, unit?.symbol, comma]);
    const dated = (Object.keys(this.columns) as Role[]).filter(role => DATED.test(role) && this.has(role));
    const orders = dated.map(role => this.ordersOf(this.columns[role]!));
    return JSON.stringify([this.table.headings, this.table.block.column, this.columns, facts, orders, this.questions]);
  }

  /** The cell as it stands; "" where the table has no such column. */
  cell(row: number, role: Role): CellValue {
    const column = this.columns[role];
    return column === undefined ? '' : this.cells.value(row, column);
  }

  /** A name, a remark: merged cells give theirs to all rows they cover, and a ditto mark stands for what is above it. */
  name(row: number, role: Role, read: (cell: CellValue) => string = nameOfCell): string {
    const column = this.columns[role];
    if (column === undefined) return '';
    const own = this.cells.shown(row, column);
    const name = read(isDitto(own) ? this.cells.shown(this.rowMeant(row, column), column) : own);
    return name + (this.added[role]?.(name, row) ?? '');
  }

  /** Several names of one cell in one line, with semicolons where it has line breaks. */
  list = (row: number, role: Role): string => this.name(row, role, listOfCell);

  /** The row whose cell says it: of ditto marks the one above them. */
  private rowMeant(row: number, column: number): number {
    if (!isDitto(this.cells.shown(row, column))) return row;
    let meant = row;
    const saysNothing = (at: number) => isDitto(this.cells.shown(at, column)) || this.cells.shown(at, column) === '';
    while (saysNothing(meant) && meant > this.table.block.row + 1) meant -= 1;
    return meant;
  }

  /** A name that must be there. @throws TradeError naming `label`: an error value, or nothing */
  needed(row: number, role: Role, label: string): string {
    this.refuseErrorName(row, role, label);
    const name = this.name(row, role);
    if (name === '') throw new TradeError('blank', label, 'is blank', 'fill it in');
    return name;
  }

  /** @throws TradeError naming `label` where an error value stands in the place of a name */
  refuseErrorName(row: number, role: Role, label: string): void {
    const column = this.columns[role];
    const cell = column === undefined ? '' : this.cells.shown(this.rowMeant(row, column), column);
    if (typeof cell === 'object')
      throw new TradeError('notANumber', label, `is ${cell.error}`, cell.sentence ?? 'correct that cell first');
  }

  /** @throws TradeError naming `label` */
  measure(
    row: number,
    role: Role,
    sign?: 'any' | 'notNegative' | 'positive',
    { label = this.measures[role]!.label, rows }: CellReading = {},
  ): Measure | undefined {
    const column = this.columns[role];
    const { quantity, eitherWay } = this.measures[role]!;
    if (column === undefined) return undefined;
    this.refuseMerged(row, column, label, rows);
    const { unit, comma } = this.facts.get(role)!;
    const format = this.cells.format(row, column);
    refusePercent(this.cells.value(row, column), format, label);
    const rules = { comma, format, sign, eitherWay };
    const why = `column ${this.heading(role) || columnLetters(column)} has no unit that is known: say which it is`;
    return measureOfCell(this.cells.value(row, column), label, quantity, unit, rules, why);
  }

  /** @throws TradeError naming `label` */
  number(row: number, role: Role, label: string, sign?: 'any' | 'notNegative' | 'positive', rows?: number): Decimal | undefined {
    const column = this.columns[role];
    if (column === undefined) return undefined;
    this.refuseMerged(row, column, label, rows);
    return numberOfCell(this.cells.value(row, column), label, { sign, comma: this.facts.get(role)?.comma });
  }

  /** @throws TradeError naming `label` */
  count(row: number, role: Role, label: string): number | undefined {
    const column = this.columns[role];
    if (column === undefined) return undefined;
    this.refuseMerged(row, column, label);
    const rules = { format: this.cells.format(row, column), comma: this.facts.get(role)?.comma };
    return countOfCell(this.cells.value(row, column), label, rules);
  }

  /** The order of day and month in a column of dates. */
  private ordersOf(column: number): DateOrders {
    let orders = this.orders.get(column);
    if (!orders) this.orders.set(column, (orders = columnDateOrders(this.cells, this.table, column)));
    return orders;
  }

  /** A day with its time; merged cells give theirs to all rows they cover. @throws TradeError naming `label` */
  moment(row: number, role: Role, label: string): number | undefined {
    const column = this.columns[role];
    return column === undefined ? undefined : momentOfCell(this.cells.shown(row, column), label, this.ordersOf(column));
  }

  /** Address of the cell that holds what is shown: `C7`; of merged cells that of their first. */
  place(row: number, role: Role): string | undefined {
    const column = this.columns[role];
    if (column === undefined) return undefined;
    const meant = this.rowMeant(row, column);
    return addressOf({ ...(this.cells.merge(meant, column) ?? { row: meant, column }), rows: 1, columns: 1 });
  }

  private refuseMerged(row: number, column: number, label: string, covered = 1): void {
    const merge = this.cells.merge(row, column);
    if (!merge || merge.rows === 1 || (merge.row === row && merge.rows <= covered)) return;
    const rows = `is merged over rows ${merge.row + 1} to ${merge.row + merge.rows}`;
    throw new TradeError('shape', label, rows, 'unmerge the cells and give each row its own number');
  }
}
