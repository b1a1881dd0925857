import type { LengthUnit } from '../../core/units/lengthUnit';
import { dayNumber } from '../../core/units/sheetDate';
import type { CrimpReadOptions } from '../crimps/crimpReadOptions';
import { isUnmeasured, type MeasuredCrimp } from '../crimps/crimpRow';
import type { CrimpSheet } from '../crimps/crimpSheet';
import { NOTHING_ABOVE } from '../crimps/settingsAbove';
import { crimpReport, crimpRowsOf, measuredCrimps, whyNotAnalysed, type CrimpReading } from '../crimps/readCrimpRows';
import type { MachineChange } from '../crimps/readMachineChanges';
import type { ReadReport } from '../table/tableRows';
import { analyseReadings, type ReadingsAnalysis } from './analyseReadings';
import { crimpMark, fromDayOf, listMark, NOTHING_DECIDED, type AnalysisMemory } from './analysisMemory';
import { machineFacts } from './machineFacts';

/** What is known besides the sheet of crimps. */
export interface AnalysisContext {
  /** What the workbook's logs say of its machines. */
  readonly changes: readonly MachineChange[];
  readonly memory: AnalysisMemory;
  /** ISO date: later dates are slips of the pen. */
  readonly today?: string | undefined;
}

const NO_CONTEXT: AnalysisContext = { changes: [], memory: NOTHING_DECIDED };

/** The crimps of a sheet as they were read, and what their readings say. */
export interface Analysed {
  readonly reading: CrimpReading;
  /** Rows taken and left out. */
  readonly report: ReadReport;
  readonly crimps: readonly MeasuredCrimp[];
  /** Crimps that somebody left out for good. */
  readonly leftOut: readonly MeasuredCrimp[];
  /** Crimps that are not measured yet. */
  readonly waiting: number;
  readonly analysis: ReadingsAnalysis;
  readonly unit: LengthUnit;
}

/** Reads the crimps that are meant and says what their readings mean. */
export function analysisOf(sheet: CrimpSheet, options: CrimpReadOptions, context: AnalysisContext = NO_CONTEXT): Analysed {
  const reading = crimpRowsOf(sheet, options);
  const { unit } = reading;
  const { memory, changes, today } = context;
  const marked = new Set(memory.leftOut);
  const measured = measuredCrimps(reading, unit);
  const isLeftOut = (crimp: MeasuredCrimp) => marked.size > 0 && marked.has(crimpMark(crimp));
  const crimps = measured.filter(crimp => !isLeftOut(crimp));
  const above = reading.tables[0]?.above ?? NOTHING_ABOVE;
  const factsOf = machineFacts(sheet.catalogue, unit, above, options.typed);
  const rules = {
    uncertainty: reading.uncertainty ?? options.typed.uncertainty,
    factsOf,
    changes,
    fromDay: fromDayOf(memory, sheet.sheet),
    today: today === undefined ? undefined : dayNumber(today),
    isOneMachine: (machine: string) => memory.oneMachine.includes(listMark(sheet.sheet, machine)),
  };
  return {
    reading,
    report: crimpReport(reading, whyNotAnalysed),
    crimps,
    leftOut: measured.filter(isLeftOut),
    waiting: reading.rows.filter(isUnmeasured).length,
    analysis: analyseReadings({ unit, crimps }, rules),
    unit,
  };
}
