import type { Catalogue } from '../../core/catalogue/catalogue';
import { TradeError } from '../../core/tradeError';
import type { Length } from '../../core/units/lengthUnit';
import type { MeasureUnit } from '../../core/units/measureUnit';
import type { Measure } from '../../cells/sheetCell';
import type { TableReader } from '../table/tableReader';
import type { GroupOfRow } from './hoseGroups';
import type { JobRole } from './jobRoles';

/** How lines are read. */
export interface LineReading {
  readonly catalogue: Catalogue | undefined;
  /** What the bench can cut. */
  readonly step: Length;
  /** Unit of pressures where a heading names none; undefined: a bare number is not taken. */
  readonly pressureUnit: MeasureUnit | undefined;
  /** Lines with a single coupling are meant so: their other end stays plain hose. */
  readonly plainEnds: boolean;
  /** The lines are to be priced, and no function gives the cost of a hose with a single coupling. */
  readonly isPriced?: boolean | undefined;
  /** Rows that are done or planned already are taken all the same. */
  readonly takesDone: boolean;
  readonly takesPlanned: boolean;
  /** What the heading of its group says of a row. */
  readonly groupOf?: ((row: number) => GroupOfRow | undefined) | undefined;
}

/** Reads one row; what cannot be read becomes a reason not to make the line. */
export class JobLineReader {
  readonly reasons: string[] = [];
  readonly notes: string[] = [];

  constructor(
    readonly reader: TableReader<JobRole>,
    readonly row: number,
  ) {}

  private attempt<T>(read: () => T, into: string[]): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      into.push(error.message);
      return undefined;
    }
  }

  name(role: JobRole): string {
    return this.reader.name(this.row, role);
  }

  /** A part that the line is made of: an error value in its place is no blank. */
  part(role: JobRole, label: string): string {
    this.attempt(() => this.reader.refuseErrorName(this.row, role, label), this.reasons);
    return this.name(role);
  }

  /** What the line cannot be made without reading. */
  must(role: JobRole, sign?: 'any' | 'notNegative' | 'positive'): Measure | undefined {
    return this.attempt(() => this.reader.measure(this.row, role, sign), this.reasons);
  }

  /** What is worth a note where it cannot be read. */
  may(role: JobRole, sign?: 'any' | 'notNegative' | 'positive'): Measure | undefined {
    return this.attempt(() => this.reader.measure(this.row, role, sign), this.notes);
  }

  number(role: JobRole, label: string): number | undefined {
    return this.attempt(() => this.reader.number(this.row, role, label, 'any'), this.notes)?.toNumber();
  }

  quantity(): number | undefined {
    if (!this.reader.has('quantity')) return 1;
    const count = this.attempt(() => this.reader.count(this.row, 'quantity', 'quantity'), this.reasons);
    if (count === undefined && this.reasons.length === 0) this.reasons.push('quantity is blank: fill it in');
    return count;
  }
}
