import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CrimpReadOptions } from '../crimps/crimpReadOptions';
import { isUnmeasured, type MeasuredCrimp } from '../crimps/crimpRow';
import type { CrimpSheet } from '../crimps/crimpSheet';
import { NOTHING_ABOVE } from '../crimps/settingsAbove';
import { crimpReport, crimpRowsOf, measuredCrimps, whyNotAnalysed, type CrimpReading } from '../crimps/readCrimpRows';
import type { ReadReport } from '../table/tableRows';
import { analyseReadings, type ReadingsAnalysis } from './analyseReadings';
import { machineFacts } from './machineFacts';

/** The crimps of a sheet as they were read, and what their readings say. */
export interface Analysed {
  readonly reading: CrimpReading;
  /** Rows taken and left out. */
  readonly report: ReadReport;
  readonly crimps: readonly MeasuredCrimp[];
  /** Crimps that are not measured yet. */
  readonly waiting: number;
  readonly analysis: ReadingsAnalysis;
  readonly unit: LengthUnit;
}

/** Reads the crimps that are meant and says what their readings mean. */
export function analysisOf(sheet: CrimpSheet, options: CrimpReadOptions): Analysed {
  const reading = crimpRowsOf(sheet, options);
  const { unit } = reading;
  const crimps = measuredCrimps(reading, unit);
  const above = reading.tables[0]?.above ?? NOTHING_ABOVE;
  const factsOf = machineFacts(sheet.catalogue, unit, above, options.typed);
  const uncertainty = reading.uncertainty ?? options.typed.uncertainty;
  return {
    reading,
    report: crimpReport(reading, whyNotAnalysed),
    crimps,
    waiting: reading.rows.filter(isUnmeasured).length,
    analysis: analyseReadings({ unit, crimps }, { uncertainty, factsOf }),
    unit,
  };
}
