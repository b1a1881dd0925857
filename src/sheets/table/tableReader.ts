import {
  countOfCell,
  measureOfCell,
  momentOfCell,
  nameOfCell,
  numberOfCell,
  type ColumnComma,
  type Measure,
} from '../../cells/sheetCell';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { measureUnit, unitSymbols, type MeasureUnit, type Quantity } from '../../core/units/measureUnit';
import { commaReadings, hasDecimalComma } from '../../core/units/numberText';
import { addressOf, columnLetters } from '../../workbook/a1';
import type { CellValue } from '../../workbook/workbook';
import { isDitto } from './ditto';
import type { FoundTable } from './findTables';
import { statedUnit } from './heading';
import type { SheetCells } from './sheetCells';
import type { Asked, TableAnswers } from './tableAnswers';
import { type ColumnsByRole } from './tableColumns';
import { correctionKey } from './headingCorrections';
import { isUnitsRow } from './tableRows';

/** Something that the sheet does not say; until it is answered, the rows that need it are refused. */
export interface TableQuestion {
  readonly asked: Asked;
  /** What it is about, as it is remembered: a heading, or words of cells. */
  readonly heading: string;
  /** `C: Length` */
  readonly column: string;
  readonly sentence: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  /** The likeliest answer; only proposed. */
  readonly proposal?: string | undefined;
  /** Why no row of the table can be taken until it is answered. */
  readonly refusal?: string | undefined;
}

/** What a role's numbers measure, and which units belong together: lengths of hose, or small ones like diameters. */
export interface MeasureRole {
  readonly quantity: Quantity;
  readonly group: 'length' | 'diameter' | 'other';
  readonly label: string;
  /** A tolerance, which may be written with its sign: `± 0.1`. */
  readonly eitherWay?: boolean | undefined;
}

/** What is known of one number besides its column. */
export interface CellReading {
  /** Instead of the role's own label. */
  readonly label?: string | undefined;
  /** Rows that one record covers, from this one on: cells merged over them are its own. */
  readonly rows?: number | undefined;
}

interface ColumnFacts {
  readonly unit: MeasureUnit | undefined;
  readonly comma: ColumnComma;
}

/** The digits of a cell's text, without the unit behind them. */
const withoutUnit = (text: string) => text.replace(/\s*[a-zµ°"'″′].*$/i, '');

const NAMED_UNITS = ['mm', 'cm', 'm', 'in', 'ft', 'yd'];

/** Reads the rows of one table: names, numbers with their units, days. What the sheet does not say becomes a question. */
export class TableReader<Role extends string> {
  readonly questions: TableQuestion[] = [];
  private readonly facts = new Map<Role, ColumnFacts>();

  constructor(
    readonly cells: SheetCells,
    readonly table: FoundTable,
    readonly columns: ColumnsByRole<Role>,
    private readonly measures: Readonly<Partial<Record<Role, MeasureRole>>>,
    private readonly answers: TableAnswers,
    /** Units that are proposed, never taken, where a heading names none. */
    private readonly proposals: Readonly<Partial<Record<Quantity, MeasureUnit>>> = {},
    /** Roles of plain numbers, whose commas are asked about too. */
    numbers: readonly Role[] = [],
    /** What a cell beside it adds to a name in a row: the size of a hose. */
    private readonly added: Readonly<Record<string, ((name: string, row: number) => string) | undefined>> = {},
  ) {
    for (const role of Object.keys(measures) as Role[]) if (this.has(role)) this.facts.set(role, this.factsOf(role));
    for (const role of numbers) if (this.has(role)) this.facts.set(role, { unit: undefined, comma: this.commaOf(role) });
  }

  has(role: Role): boolean {
    return this.columns[role] !== undefined;
  }

  heading(role: Role): string {
    return this.table.headings[this.columns[role]! - this.table.block.column] ?? '';
  }

  /** Unit of a column: as its heading states, as the table's other columns do, or as somebody answered. */
  unitOf(role: Role): MeasureUnit | undefined {
    return this.facts.get(role)?.unit;
  }

  /** All that is known of the table besides its rows, as a text to compare. */
  get known(): string {
    const facts = [...this.facts].map(([role, { unit, comma }]) => [role, unit?.symbol, comma]);
    return JSON.stringify([this.table.headings, this.table.block.column, this.columns, facts, this.questions]);
  }

  /** The cell as it stands; "" where the table has no such column. */
  cell(row: number, role: Role): CellValue {
    const column = this.columns[role];
    return column === undefined ? '' : this.cells.value(row, column);
  }

  /** A name, a remark: merged cells give theirs to all rows they cover, and a ditto mark stands for what is above it. */
  name(row: number, role: Role): string {
    const column = this.columns[role];
    if (column === undefined) return '';
    const own = this.cells.shown(row, column);
    const name = nameOfCell(isDitto(own) ? this.cells.shown(this.rowMeant(row, column), column) : own);
    return name + (this.added[role]?.(name, row) ?? '');
  }

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
    const rules = { comma, format: this.cells.format(row, column), sign, eitherWay };
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

  /** A day with its time; merged cells give theirs to all rows they cover. @throws TradeError naming `label` */
  moment(row: number, role: Role, label: string): number | undefined {
    const column = this.columns[role];
    return column === undefined ? undefined : momentOfCell(this.cells.shown(row, column), label);
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

  /** Cells of a column that are filled, under the heading. */
  private filled(column: number): CellValue[] {
    const { block, below } = this.table;
    const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).concat(below);
    return rows.map(row => this.cells.value(row, column)).filter(cell => cell !== '');
  }

  private columnName(role: Role): string {
    return `${columnLetters(this.columns[role]!)}${this.heading(role) && `: ${this.heading(role)}`}`;
  }

  private commaOf(role: Role): ColumnComma {
    const heading = this.heading(role);
    const said = this.answers.comma.get(correctionKey(heading));
    if (said === 'decimal' || said === 'thousands') return said;
    const texts = this.filled(this.columns[role]!).filter(cell => typeof cell === 'string');
    if (texts.some(text => hasDecimalComma(withoutUnit(text)))) return 'decimal';
    const open = texts.find(text => commaReadings(withoutUnit(text)));
    if (open === undefined) return 'refuse';
    const [decimal, thousands] = commaReadings(withoutUnit(open))!;
    this.questions.push({
      asked: 'comma',
      heading,
      column: this.columnName(role),
      sentence: `Column ${this.columnName(role)} has ${open}: is that ${decimal} or ${thousands}?`,
      choices: [
        { value: 'decimal', label: decimal },
        { value: 'thousands', label: thousands },
      ],
    });
    return 'refuse';
  }

  private factsOf(role: Role): ColumnFacts {
    return { unit: this.findUnit(role), comma: this.commaOf(role) };
  }

  private statedBy(role: Role): MeasureUnit | undefined {
    const { quantity } = this.measures[role]!;
    const heading = this.heading(role);
    const said = this.answers.unit.get(correctionKey(heading));
    const ofAnswer = said === undefined ? undefined : measureUnit(quantity, said);
    return ofAnswer ?? statedUnit(heading, quantity).unit ?? this.unitBelow(role);
  }

  /** The unit in a line of units under the headings. */
  private unitBelow(role: Role): MeasureUnit | undefined {
    const row = this.table.block.row + 1;
    if (!isUnitsRow(this.cells, this.table, row)) return undefined;
    const text = nameOfCell(this.cells.value(row, this.columns[role]!));
    return measureUnit(this.measures[role]!.quantity, text.replace(/^[([](.*)[)\]]$/, '$1'));
  }

  /** The unit that all other columns of a group state; undefined where they differ or none does. */
  private agreed(role: Role, groups: readonly MeasureRole['group'][]): MeasureUnit | undefined {
    const { quantity } = this.measures[role]!;
    const others = (Object.keys(this.measures) as Role[]).filter(
      each =>
        each !== role &&
        this.has(each) &&
        this.measures[each]!.quantity === quantity &&
        groups.includes(this.measures[each]!.group),
    );
    const units = new Set(others.map(each => this.statedBy(each)).filter(unit => unit !== undefined));
    return units.size === 1 ? [...units][0] : undefined;
  }

  private findUnit(role: Role): MeasureUnit | undefined {
    const stated = this.statedBy(role);
    if (stated) return stated;
    const { quantity, group } = this.measures[role]!;
    const heading = this.heading(role);
    const { unknown } = statedUnit(heading, quantity);
    if (unknown === undefined && quantity === 'length') {
      const alike = this.agreed(role, [group]) ?? this.agreed(role, ['length', 'diameter']);
      // A rack in metres says nothing of a diameter beside it.
      if (alike && (group === 'length' ? alike : /^(?:mm|in)$/.test(alike.symbol))) return alike;
    }
    const needsUnit = this.filled(this.columns[role]!).some(
      cell => typeof cell === 'number' || (typeof cell === 'string' && /\d\s*$/.test(cell)),
    );
    if (needsUnit) this.ask(role, unknown);
    return undefined;
  }

  private ask(role: Role, unknown: string | undefined): void {
    const { quantity } = this.measures[role]!;
    const name = this.columnName(role);
    const symbols = quantity === 'length' ? NAMED_UNITS : unitSymbols(quantity).split(', ');
    this.questions.push({
      asked: 'unit',
      heading: this.heading(role),
      column: name,
      sentence:
        unknown === undefined
          ? `Column ${name} has no unit. Which is it?`
          : `Column ${name}: “${unknown}” is no unit that is known. Which is it?`,
      choices: symbols.map(symbol => ({ value: symbol, label: symbol })),
      proposal: this.proposals[quantity]?.symbol,
    });
  }
}
