import { Decimal } from '../../core/units/decimal';
import type { MeasureUnit } from '../../core/units/measureUnit';
import type { Measure } from '../../cells/sheetCell';
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
  const weakest = rating !== undefined && catalogue ? { value: new Decimal(rating), unit: catalogue.units.pressure } : undefined;
  const ofSheet: RatedPressure | undefined = typed && { ...typed, from: 'sheet' };
  const ofPart: RatedPressure | undefined = weakest && { ...weakest, from: 'weakest part' };
  if (!ofSheet || !ofPart) return ofSheet ?? ofPart;
  if (inUnit(ofSheet, ofPart.unit).lt(ofPart.value)) return ofSheet;
  if (!inUnit(ofSheet, ofPart.unit).eq(ofPart.value)) {
    line.notes.push(
      `the sheet says ${ofSheet.value} ${ofSheet.unit.symbol}, the weakest part is rated ${ofPart.value} ${ofPart.unit.symbol}: the lower counts`,
    );
  }
  return ofPart;
}

/** A pressure without a unit, taken in the unit that was said for the pane. */
function bare(line: JobLineReader, unit: MeasureUnit): Measure | undefined {
  const value = line.number('pressure', 'working pressure');
  return value !== undefined && value > 0 ? { value: new Decimal(value), unit } : undefined;
}
