import { nameOfCell, type ColumnComma } from '../../cells/sheetCell';
import { measureUnit, unitSymbols, type MeasureUnit, type Quantity } from '../../core/units/measureUnit';
import { commaReadings, hasDecimalComma } from '../../core/units/numberText';
import { columnLetters } from '../../workbook/a1';
import type { CellValue } from '../../workbook/workbook';
import type { FoundTable } from './findTables';
import { statedUnit } from './heading';
import { correctionKey } from './headingCorrections';
import type { MeasureRole } from './measureRole';
import type { SheetCells } from './sheetCells';
import type { TableAnswers } from './tableAnswers';
import type { ColumnsByRole } from './tableColumns';
import type { TableQuestion } from './tableQuestion';
import { isUnitsRow } from './tableRows';

/** What holds for all numbers of a column. */
export interface ColumnFacts {
  readonly unit: MeasureUnit | undefined;
  readonly comma: ColumnComma;
}

/** The heading of a role's column; "" where it has none. */
export const headingOfRole = <Role extends string>(
  { headings, block }: FoundTable,
  columns: ColumnsByRole<Role>,
  role: Role,
): string => headings[columns[role]! - block.column] ?? '';

/** The digits of a cell's text, without the unit behind them. */
const withoutUnit = (text: string) => text.replace(/\s*[a-zµ°"'″′].*$/i, '');

const NAMED_UNITS = ['mm', 'cm', 'm', 'in', 'ft', 'yd'];
/** Diameters are measured in thousandths, too; hose is not. */
const DIAMETER_UNITS = [...NAMED_UNITS, 'thou'];

/** Finds out in which unit the numbers of a column are, and what a comma in them is; where the sheet does not say, it asks. */
export class ColumnFactsFinder<Role extends string> {
  readonly questions: TableQuestion[] = [];

  constructor(
    private readonly cells: SheetCells,
    private readonly table: FoundTable,
    private readonly columns: ColumnsByRole<Role>,
    private readonly measures: Readonly<Partial<Record<Role, MeasureRole>>>,
    private readonly answers: TableAnswers,
    private readonly proposals: Readonly<Partial<Record<Quantity, MeasureUnit>>>,
  ) {}

  factsOf(role: Role): ColumnFacts {
    return { unit: this.findUnit(role), comma: this.commaOf(role) };
  }

  /** Of a plain number: it has no unit. */
  factsOfNumber(role: Role): ColumnFacts {
    return { unit: undefined, comma: this.commaOf(role) };
  }

  private headingOf(role: Role): string {
    return headingOfRole(this.table, this.columns, role);
  }

  /** Cells of a column that are filled, under the heading. */
  private filled(column: number): CellValue[] {
    const { block, below } = this.table;
    const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).concat(below);
    return rows.map(row => this.cells.value(row, column)).filter(cell => cell !== '');
  }

  private columnName(role: Role): string {
    return `${columnLetters(this.columns[role]!)}${this.headingOf(role) && `: ${this.headingOf(role)}`}`;
  }

  private commaOf(role: Role): ColumnComma {
    const heading = this.headingOf(role);
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

  private statedBy(role: Role): MeasureUnit | undefined {
    const { quantity } = this.measures[role]!;
    const heading = this.headingOf(role);
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
        this.columns[each] !== undefined &&
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
    const heading = this.headingOf(role);
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
    const { quantity, group } = this.measures[role]!;
    const name = this.columnName(role);
    const lengths = group === 'diameter' ? DIAMETER_UNITS : NAMED_UNITS;
    const symbols = quantity === 'length' ? lengths : unitSymbols(quantity).split(', ');
    this.questions.push({
      asked: 'unit',
      heading: this.headingOf(role),
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
