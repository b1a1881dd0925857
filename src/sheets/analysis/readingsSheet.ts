import type { Change } from '../../workbook/workbook';
import { addressOf } from '../../workbook/a1';
import { SheetWriter } from '../print/sheetWriter';
import { VERDICTS, type MachineReadings } from './analyseReadings';
import type { Analysed } from './analysisOf';
import { CAPABILITY_WORDS, capabilityOf } from './capabilityOf';
import { findingText } from './findingText';
import { writeCharts } from './readingsCharts';
import { CRIMP_HEADINGS, writeCrimps } from './readingsCrimps';
import { Report, SIGNED_DIAMETER } from './report';
import { responseText } from './responseText';

/** Where the numbers come from and when they were written. */
export interface SheetOrigin {
  readonly source: string;
  readonly today: string;
}

function writeMachine(report: Report, machine: MachineReadings): void {
  const { combinations, cause, crimps } = machine;
  const { headline, details } = findingText(machine, report.unit);
  report.title(machine.machine || 'All crimps');
  report.lines(headline, ...details, responseText(machine, report.unit), '');
  const rows = combinations.map(({ name, crimps: all, current, cause: own }, index) => [
    index + 1,
    name,
    all.length,
    current.length,
    own.mean.toNumber(),
    own.correction.toNumber(),
    own.finding,
  ]);
  const total = [
    '',
    'All',
    crimps.length,
    cause.crimps,
    cause.offset?.toNumber() ?? '',
    cause.correction.toNumber(),
    cause.finding,
  ];
  const headings = [
    'Strip',
    'Combination',
    'Crimps',
    'At the present setting',
    `Mean deviation (${report.unit})`,
    `Change of diameter wanted (${report.unit})`,
    'Finding',
  ];
  report.table(headings, [total, ...rows], { 4: SIGNED_DIAMETER, 5: SIGNED_DIAMETER });
  writeCapability(report, machine);
}

function writeCapability(report: Report, { crimps, tolerance }: MachineReadings): void {
  const found = capabilityOf(crimps, tolerance.toNumber());
  if ('indices' in found) {
    const indices = found.indices.map(({ index, value, low, high }) => [
      index,
      CAPABILITY_WORDS[index],
      value ?? '',
      low ?? '',
      high ?? '',
    ]);
    report.table(['Index', 'Capability', 'Value', '95 % from', 'to'], indices, { 2: '0.00', 3: '0.00', 4: '0.00' });
  } else {
    report.lines(`No capability: ${found.reason}.`, '');
  }
}

/**
 * A new sheet with the results as values, and charts of the host's own beside them.
 * @param sheet a name that is not taken
 */
export function readingsSheet(
  sheet: string,
  { analysis, report: read, waiting, unit }: Analysed,
  origin: SheetOrigin,
): readonly Change[] {
  const report = new Report(new SheetWriter(sheet), unit);
  report.lines(
    'Readings: machine or setting',
    `${origin.source}; ${analysis.crimps.length} crimps; written ${origin.today}.`,
    'Findings at 95 % confidence; less than half the tolerance is left alone. Rejected crimps stay rejected; a new setting is tried on one trial piece first. The makers’ current data come first.',
  );
  report.writer.style(0, 0, 1, 1, { bold: true, fontSize: 14 });
  report.row += 1;
  report.table(
    ['', 'Crimps', 'Count'],
    [
      ...VERDICTS.map(verdict => ['', verdict, analysis.counts[verdict]]),
      ['', 'not measured yet', waiting],
      ['', 'cannot be used', read.leftOut.filter(({ reason }) => reason === 'problem').length],
    ],
    {},
  );
  for (const machine of analysis.machines) writeMachine(report, machine);
  for (const machine of analysis.machines) {
    writeCrimps(report, machine);
    writeCharts(report, machine);
  }
  const last = report.row;
  return report.writer
    .widths(44, 190, 60, 80, 76, 76, 120, 60, 60, 64, 110, 40, 50, 50, 44)
    .page({
      orientation: 'landscape',
      printArea: addressOf({ row: 0, column: 0, rows: last, columns: CRIMP_HEADINGS.length }),
      fitWidth: true,
    })
    .done();
}
