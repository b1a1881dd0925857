import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import { number } from '../../host/cells/readers';
import type { CellValue } from '../../host/workbook';
import { lengthOfCell, unitOfHeading } from '../sheets/lengthCell';
import { cellOf, textOf } from '../sheets/sheetTable';
import type { Sourced } from './entrySlot';
import { crimpColumn, type CrimpField, type EndLetter, type EntryTable } from './entryTable';
import type { SettingAbove } from './settingsAbove';

type Quantity = SettingAbove | 'target' | 'dial' | 'smallest' | 'largest';
const LENGTHS: ReadonlySet<Quantity> = new Set(['target', 'tolerance', 'maxSpread', 'smallest', 'largest']);
const WORDS: Partial<Record<Quantity, string>> = {
  maxSpread: 'largest spread',
  step: 'change per digit',
  largestMove: 'largest move',
};

/** Reads the cells of one crimp; what cannot be read becomes the slot's problem. */
export class SlotReader {
  problem: string | undefined;

  constructor(
    private readonly table: EntryTable,
    private readonly row: number,
    private readonly end: EndLetter,
    readonly unit: LengthUnit,
  ) {}

  private attempt<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      this.problem ??= error.message;
      return undefined;
    }
  }

  column(field: CrimpField) {
    return crimpColumn(this.table, field, this.end);
  }

  text(field: CrimpField): string {
    const key = this.column(field);
    return key ? textOf(this.table, this.row, key) : '';
  }

  /** A number of a cell; `unit` is what stands behind the heading. */
  number(quantity: Quantity, cell: CellValue, unit: string, from: string): Sourced | undefined {
    if (cell === '') return undefined;
    const label = WORDS[quantity] ?? quantity;
    const value = this.attempt((): Decimal | undefined => {
      if (LENGTHS.has(quantity)) return lengthOfCell(cell, label, unit, this.unit);
      if (typeof cell === 'object') throw new TradeError('notANumber', label, `is ${cell.error}`, 'put that cell right first');
      const read = number()(cell, label);
      const stepUnit = quantity === 'step' ? unitOfHeading(unit) : undefined;
      return stepUnit ? convertLength(read, stepUnit, this.unit) : read;
    });
    return value && { value, from };
  }

  ofRow(quantity: Quantity, key: keyof EntryTable['columns'] | undefined): Sourced | undefined {
    const column = key && this.table.columns[key];
    return column && this.number(quantity, cellOf(this.table, this.row, key), column.unit, `column ${column.heading}`);
  }
}
