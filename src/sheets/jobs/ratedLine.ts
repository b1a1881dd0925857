import { Decimal } from '../../core/units/decimal';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { CELL_DIGITS } from '../../core/units/scaledDecimal';
import type { Measure } from '../../cells/sheetCell';
import { readRating } from '../catalogue/ratingDecimals';
import { ratedDown } from '../table/ratedDown';
import type { RatedPressure } from './jobLine';
import type { CatalogueVerdict } from './jobStanding';
import { type LineReading, JobLineReader } from './jobLineReader';
import { inUnit } from './inUnit';

/** The weakest part's rating; a pressure typed in the sheet counts only where it is lower. */
export function ratedLine(
  line: JobLineReader,
  judged: CatalogueVerdict,
  { catalogue, pressureUnit }: LineReading,
): RatedPressure | undefined {
  const typed = line.reader.unitOf('pressure') || !pressureUnit ? line.may('pressure') : bare(line, pressureUnit);
  const rating = judged.assembly?.workingPressure;
  const ofSheet = typed && ({ value: ratedDown(typed.value, typed.unit.symbol), unit: typed.unit, from: 'sheet' } as const);
  if (rating === undefined || !catalogue) return ofSheet;
  const exact = new Decimal(rating);
  const unit = catalogue.units.pressure;
  const ofPart = { value: readRating(catalogue, exact), unit, from: 'weakest part' } as const;
  if (!typed || !ofSheet) return ofPart;
  // What the sheet took from the catalogue may be rounded down or not: between the two it is the part's own.
  const inSheet = inUnit(typed, unit).toSignificantDigits(CELL_DIGITS);
  if (inSheet.lt(ofPart.value)) return ofSheet;
  if (inSheet.gt(exact)) {
    line.notes.push(
      `the sheet says ${ofSheet.value} ${ofSheet.unit.symbol}, the weakest part is rated ${ofPart.value} ${unit.symbol}: the lower counts`,
    );
  }
  return ofPart;
}

/** A pressure without a unit, taken in the unit that was said for the pane. */
function bare(line: JobLineReader, unit: MeasureUnit): Measure | undefined {
  const value = line.number('pressure', 'working pressure');
  return value !== undefined && value > 0 ? { value: new Decimal(value), unit } : undefined;
}
