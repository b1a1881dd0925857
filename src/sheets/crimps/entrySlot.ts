import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CellValue } from '../../workbook/workbook';

/** A number and where it comes from, in words: `column Dial`, `Machines`, `Catalogue`. */
export interface Sourced {
  readonly value: Decimal;
  readonly from: string;
}

/** Source of a dial that was typed at the bench. */
export const AS_ENTERED = 'as entered';

/** One crimp that waits for its readings, or has them: a row of the sheet, or one end in a row that holds both. */
export interface EntrySlot {
  readonly sheet: string;
  /** Row as the sheet shows it. */
  readonly row: number;
  /** End of the assembly in the sheet's words: `A`, `B`; "" where it does not say. */
  readonly end: string;
  /** Line, assembly, piece: what the bench calls it. */
  readonly title: string;
  readonly line: string;
  readonly assembly: string;
  readonly piece: string;
  readonly order: string;
  readonly operator: string;
  /** Cell of the column Date; "" where the table has none. */
  readonly date: CellValue;
  readonly hose: string;
  readonly fitting: string;
  /** Hose and fitting, or the sheet's own word for the pair. */
  readonly combination: string;
  readonly machine: string;
  readonly die: string;
  /** The die as the sheet itself says it; "" where only the catalogue does. */
  readonly dieStanding: string;
  readonly hoseLot: string;
  /** When the hose was made, as its cell has it. */
  readonly hoseMade: CellValue;
  readonly fittingLot: string;
  readonly unit: LengthUnit;
  /** Cells of the readings: `G12`. */
  readonly cells: readonly string[];
  /** What stands in them. */
  readonly standing: readonly CellValue[];
  /** Cells that hold formulas: never written to. */
  readonly formulaCells: readonly string[];
  readonly target: Sourced | undefined;
  readonly tolerance: Sourced | undefined;
  readonly maxSpread: Sourced | undefined;
  readonly dial: Sourced | undefined;
  /** Cell of the dial; undefined where the table has no column for it, or a formula stands there. */
  readonly dialCell: string | undefined;
  readonly dialStanding: CellValue;
  /** Cells that name the crimp, with what stands in them: they tell whether the row is still the same one. */
  readonly witness: readonly { readonly address: string; readonly value: CellValue }[];
  readonly step: Sourced | undefined;
  readonly lowest: Sourced | undefined;
  readonly highest: Sourced | undefined;
  readonly largestMove: Sourced | undefined;
  /** Sentences the user should know before measuring. */
  readonly notes: readonly string[];
  /** Why readings cannot be taken here. */
  readonly problem: string | undefined;
}

/** True where every reading's cell holds something. */
export function isFilled({ standing }: EntrySlot): boolean {
  return standing.every(cell => cell !== '');
}

/** What stands in a reading's cell, as text to edit; an error value is none. */
export function standingText(cell: CellValue): string {
  return typeof cell === 'object' ? '' : String(cell);
}

/** Tells combinations on a machine apart, however they are written. */
export function combinationKey({ machine, die, combination }: Pick<EntrySlot, 'machine' | 'die' | 'combination'>): string {
  return [machine, die, combination].map(word => word.trim().toLowerCase()).join('\u001f');
}
