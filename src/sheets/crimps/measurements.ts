import type { CrimpMeasure } from '../../core/crimp/crimpMeasure';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { RangeAddress } from '../../workbook/workbook';

/** What the combination of crimps is called that no column names. */
export const UNNAMED = 'All crimps';

/** One crimp that the sheet has a place for: what is known of it before it is measured. Diameters in the measurements' unit. */
export interface CrimpPlace {
  /** Row as the sheet shows it; of several rows the first. */
  readonly row: number;
  /** Cells of the readings, one a reading. */
  readonly readingsAt: readonly RangeAddress[];
  /** Hose and fitting as one name: from their own columns or from a column `Combination`. */
  readonly combination: string;
  readonly hose: string;
  readonly fitting: string;
  readonly end: string;
  readonly machine: string;
  readonly die: string;
  /** Line, crimp number or assembly as the sheet has it. */
  readonly line: string;
  /** Day number of the sheet; undefined where there is none. */
  readonly date: number | undefined;
  readonly dial: Decimal | undefined;
  readonly target: Decimal;
  /** Allowed deviation of the mean, either way. */
  readonly tolerance: Decimal;
  /** Largest spread of the readings, where sheet or catalogue state one. */
  readonly largestSpread: Decimal | undefined;
  /** Where target and tolerance come from. */
  readonly source: 'sheet' | 'catalogue' | 'typed';
}

/** A crimp with its caliper readings. */
export interface Crimp extends CrimpPlace {
  readonly readings: readonly Decimal[];
  readonly measure: CrimpMeasure;
}

/** A row that cannot be used, why, and the cell to look at. */
export interface MeasurementProblem {
  readonly row: number;
  readonly sentence: string;
  readonly at: RangeAddress;
}

/** What was read from a table of measurements. */
export interface Measurements {
  readonly unit: LengthUnit;
  /** In the order of the sheet. */
  readonly crimps: readonly Crimp[];
  /** Rows whose readings are all blank: not measured yet. */
  readonly waiting: readonly CrimpPlace[];
  readonly problems: readonly MeasurementProblem[];
}
