import { findFitting, findHose } from '../../core/catalogue/findPart';
import { lengthLimits, usualLengthRule } from '../../core/length/lengthLimits';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { splitHeading } from '../../core/units/headingUnit';
import { lengthUnitOf } from '../../core/units/lengthUnit';
import { number } from '../../cells/readers';
import type { CellValue } from '../../workbook/workbook';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';
import { lengthText } from '../table/lengthText';
import { ratedDown } from '../table/ratedDown';
import { assemblyDrawing } from './assemblyDrawing';
import type { PaperLine } from './paperColumns';
import type { PrintedLine, PrintedQuote } from './printedQuote';

/** undefined where the reader says that there is no such thing. */
function orUndefined<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

function overallOf(cell: CellValue, isMetric: boolean): Decimal | undefined {
  if (typeof cell === 'boolean' || typeof cell === 'object' || cell === '') return undefined;
  return orUndefined(() => number({ sign: 'positive', millimetres: isMetric })(cell, 'overall length'));
}

/** `+12 / −4`: what the rule of the catalogue's unit allows for this bore and length. */
function toleranceOf({ catalogue }: UsableCatalogue, { hose }: PrintedLine, overall: Decimal): string {
  const unit = lengthUnitOf(catalogue.units.length);
  const limits = orUndefined(() =>
    lengthLimits(overall, new Decimal(findHose(catalogue, String(hose)).bore), unit, usualLengthRule(unit)),
  );
  if (!limits) return '';
  return `+${lengthText(limits.longest.minus(overall), unit)} / −${lengthText(overall.minus(limits.shortest), unit)}`;
}

/** A picture where the angles of both ends are known. */
function drawingOf({ catalogue }: UsableCatalogue, line: PrintedLine, overall: Decimal): string | undefined {
  const unit = lengthUnitOf(catalogue.units.length);
  const angles = [line.fittingA, line.fittingB].map(name =>
    name === '' ? 'none' : orUndefined(() => findFitting(catalogue, String(name)).angle),
  );
  if (angles.includes(undefined)) return undefined;
  const [a, b] = angles.map(angle => (typeof angle === 'number' ? angle : undefined));
  return assemblyDrawing({ ends: [a, b], overall: `${lengthText(overall, unit)} ${unit}` });
}

/** A rating as it is read, also from a quote that was written with more decimals. */
const pressureOf = (cell: CellValue, heading: string | undefined): CellValue =>
  typeof cell === 'number' ? ratedDown(new Decimal(cell), splitHeading(heading ?? '').bracket ?? '').toNumber() : cell;

/** The lines of a quote with their tolerances and drawings, from the catalogue as it is now. */
export function paperLines(found: UsableCatalogue, { lines, headings }: PrintedQuote): readonly PaperLine[] {
  const isMetric = lengthUnitOf(found.catalogue.units.length) === 'mm';
  return lines.map(printed => {
    const line = { ...printed, pressure: pressureOf(printed.pressure, headings.pressure) };
    const overall = overallOf(line.overall, isMetric);
    if (!overall) return { ...line, tolerance: '', drawing: undefined };
    return { ...line, tolerance: toleranceOf(found, line, overall), drawing: drawingOf(found, line, overall) };
  });
}
