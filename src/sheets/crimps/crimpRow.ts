import { partKey } from '../../core/catalogue/partName';
import { measureCrimp, type CrimpMeasure } from '../../core/crimp/crimpMeasure';
import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import type { GaugeUse } from '../gauges/gaugeUse';
import type { CellValue } from '../../workbook/workbook';
import type { TableQuestion } from '../table/tableQuestion';

/** What the combination of crimps is called that no column names. */
export const UNNAMED = 'All crimps';

/** A number and where it comes from, in words: `column Dial`, `above the table`, `Machines`, `Catalogue`, `your setting`. */
export interface Sourced {
  readonly value: Decimal;
  readonly from: string;
}

/** Source of a dial that was typed at the bench. */
export const AS_ENTERED = 'as entered';

/** A cell and what it holds. */
export interface CellInSheet {
  readonly address: string;
  readonly value: CellValue;
  readonly format: string;
  readonly isFormula: boolean;
}

/** Why something cannot be used, and the cell to look at. */
export interface CrimpProblem {
  readonly sentence: string;
  readonly at: string;
  /** What settles it, where an answer does. */
  readonly question?: TableQuestion | undefined;
}

/** Cells that Entry fills in beside the readings. */
export type FilledField = 'date' | 'time' | 'operator' | 'die' | 'dial';

/** One crimp of a sheet, measured or not: the one reading for analysis, entry and records. Lengths in `unit`. */
export interface CrimpRow extends GaugeUse {
  readonly sheet: string;
  /** Row as the sheet shows it; of several rows the first. */
  readonly row: number;
  /** All rows of the sheet that it takes. */
  readonly rows: readonly number[];
  /** End of the assembly in the sheet's words: `A`, `B`; "" where it does not say. */
  readonly end: string;
  /** Line, assembly, piece: what the bench calls it. */
  readonly title: string;
  readonly line: string;
  readonly assembly: string;
  readonly piece: string;
  readonly order: string;
  readonly operator: string;
  /** Its cell as it is. */
  readonly dateInSheet: CellValue;
  readonly hose: string;
  readonly fitting: string;
  /** Hose and fitting, or the sheet's own word for the pair; "" where the row names none. */
  readonly combination: string;
  /** The table has columns that name the pair. */
  readonly isNamed: boolean;
  readonly machine: string;
  /** As the sheet says. */
  readonly die: string;
  /** As the catalogue says; "" where it does not. */
  readonly wantedDie: string;
  readonly hoseLot: string;
  /** When the hose was made, as its cell has it. */
  readonly hoseMade: CellValue;
  readonly fittingLot: string;
  readonly unit: LengthUnit;
  /** Cells of the readings, and what they are read as; undefined where one is blank or cannot be read. */
  readonly cells: readonly CellInSheet[];
  readonly readings: readonly (Decimal | undefined)[];
  readonly target: Sourced | undefined;
  readonly tolerance: Sourced | undefined;
  readonly largestSpread: Sourced | undefined;
  /** What it was made at, as the sheet says or as it was entered. */
  readonly dial: Sourced | undefined;
  /** What the machine's records, or the catalogue, say. */
  readonly wantedDial: Sourced | undefined;
  /** The catalogue's dials are not for this machine, and it has none of its own for this crimp. */
  readonly hasNoDial: boolean;
  readonly step: Sourced | undefined;
  readonly lowest: Sourced | undefined;
  readonly highest: Sourced | undefined;
  readonly largestMove: Sourced | undefined;
  /** Cells beside the readings that can be filled in; undefined where the table has no such column. */
  readonly fields: Readonly<Partial<Record<FilledField, CellInSheet>>>;
  /** Cells that name the crimp: they tell whether the row is still the same one. */
  readonly witness: readonly CellInSheet[];
  /** Sentences to know before measuring. */
  readonly notes: readonly string[];
  /** Why it cannot be judged: its limits. */
  readonly problem: CrimpProblem | undefined;
  /** Why its readings cannot be used; undefined where they can, or are all blank. */
  readonly readingProblem: CrimpProblem | undefined;
  /** Why nothing may be written to its cells; undefined where it may. */
  readonly locked: string | undefined;
}

/** A crimp with all its readings, and what they come to. */
export interface MeasuredCrimp extends Omit<CrimpRow, 'readings' | 'target' | 'tolerance' | 'largestSpread' | 'dial'> {
  readonly readings: readonly Decimal[];
  readonly target: Decimal;
  /** Allowed deviation of the mean, either way. */
  readonly tolerance: Decimal;
  readonly largestSpread: Decimal | undefined;
  readonly dial: Decimal | undefined;
  readonly measure: CrimpMeasure;
}

/** True where no reading's cell holds anything. */
export const isUnmeasured = ({ cells }: Pick<CrimpRow, 'cells'>): boolean => cells.every(({ value }) => value === '');

/** True where every reading's cell holds something. */
export const hasAllReadings = ({ cells }: CrimpRow): boolean => cells.every(({ value }) => value !== '');

/** True where it has all readings and limits, so that it can be judged. */
export const isMeasured = (row: CrimpRow): boolean => !row.problem && !row.readingProblem && !isUnmeasured(row);

/** What stands in a reading's cell, as text to edit; an error value is none. */
export function cellText({ value }: Pick<CellInSheet, 'value'>): string {
  return typeof value === 'object' ? '' : String(value);
}

/** Tells combinations on a machine apart, however they are written. */
export function combinationKey({ machine, die, wantedDie, combination }: CrimpRow): string {
  return [machine, die || wantedDie, combination].map(partKey).join('\u001f');
}

/** A measured row as it is analysed, its lengths in the unit asked for, exactly. */
export function measuredCrimp(row: CrimpRow, unit: LengthUnit = row.unit): MeasuredCrimp {
  const to = (value: Decimal) => convertLength(value, row.unit, unit);
  const readings = row.readings.map(reading => to(reading!));
  const [target, tolerance] = [to(row.target!.value), to(row.tolerance!.value)];
  return {
    ...row,
    unit,
    combination: row.combination || UNNAMED,
    readings,
    target,
    tolerance,
    largestSpread: row.largestSpread && to(row.largestSpread.value),
    dial: row.dial?.value,
    measure: measureCrimp({ readings, target, tolerance }),
  };
}
