import type { Change } from '../../workbook/workbook';
import { addressOf } from '../../workbook/a1';
import { SheetWriter } from '../print/sheetWriter';
import { VERDICTS, type MachineReadings } from './analyseReadings';
import type { Analysed } from './analysisOf';
import { capabilityOfAll } from './capabilityOf';
import { allCapabilityText, allRows, capabilityWarning } from './capabilityText';
import { dieStrips } from './dieStrips';
import { findingLines } from './finding';
import { findingsOf } from './findingsOf';
import { dieChart, timeChart, writeCharts } from './readingsCharts';
import { READINGS_HEADINGS, writeCrimps } from './readingsCrimps';
import { Report, SIGNED_DIAMETER } from './report';
import { responseText } from './responseText';
import { dayText } from './sinceText';

/** Where the numbers come from and when they were written. */
export interface SheetOrigin {
  readonly source: string;
  readonly today: string;
}

function writeMachine(report: Report, machine: MachineReadings): void {
  const { combinations, cause, crimps, counts } = machine;
  report.title(machine.machine || 'All crimps');
  findingsOf(machine, report.unit).forEach((finding, index) => {
    report.lines(`${index + 1}. ${finding.title}`, ...findingLines(finding));
  });
  report.lines('', ...counts.notes, responseText(machine, report.unit), '');
  const rows = combinations.map(({ name, crimps: all, counted, mean, cause: own }, index) => [
    index + 1,
    name,
    all.length,
    counted.length,
    mean?.toNumber() ?? '',
    own.own ?? '',
    own.correction.toNumber(),
    own.finding,
  ]);
  const total = [
    '',
    'All',
    crimps.length,
    cause.crimps,
    cause.offset?.toNumber() ?? '',
    '',
    cause.correction.toNumber(),
    cause.finding,
  ];
  const headings = [
    'Strip',
    'Combination',
    'Crimps',
    'That count',
    `Mean deviation since the last change (${report.unit})`,
    `Of its own (${report.unit})`,
    `Change of diameter wanted (${report.unit})`,
    'Finding',
  ];
  report.table(headings, [total, ...rows], { 4: SIGNED_DIAMETER, 5: SIGNED_DIAMETER, 6: SIGNED_DIAMETER });
  writeDies(report, machine);
  writeCapability(report, machine);
}

function writeDies(report: Report, machine: MachineReadings): void {
  const dies = dieStrips(machine);
  if (dies.length === 0) return;
  const rows = dies.map(({ name, crimps, cause }, index) => [
    index + 1,
    name,
    crimps.length,
    cause?.crimps.length ?? '',
    '',
    cause?.offset ?? '',
    cause?.since ? dayText(cause.since.crimp) : '',
    cause?.finding ?? 'not compared',
  ]);
  const headings = ['Strip', 'Die', 'Crimps', 'That count', '', `Of its own (${report.unit})`, 'Since', 'Finding'];
  report.table(headings, rows, { 5: SIGNED_DIAMETER, 6: '@' });
}

function writeCapability(report: Report, machine: MachineReadings): void {
  const found = capabilityOfAll(machine);
  if ('reason' in found) {
    report.lines(`No capability: ${found.reason}.`, '');
    return;
  }
  const indices = allRows(found).map(([label, { value, low, high }]) => ['', label, value ?? '', low ?? '', high ?? '']);
  report.table(['', 'Capability of all combinations', 'Value', '95 % from', 'to'], indices, { 2: '0.00', 3: '0.00', 4: '0.00' });
  const warning = capabilityWarning(machine, undefined);
  report.lines(...(warning ? [warning] : []), allCapabilityText(found), '');
}

/**
 * A new sheet with the results as values, and charts of the host's own beside them.
 * @param sheet a name that is not taken
 */
export function readingsSheet(
  sheet: string,
  { analysis, report: read, waiting, leftOut, unit }: Analysed,
  origin: SheetOrigin,
): readonly Change[] {
  const report = new Report(new SheetWriter(sheet), unit);
  report.lines(
    'Readings: machine, die or setting',
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
      ['', 'left out for good', leftOut.length],
      ['', 'cannot be used', read.leftOut.filter(({ reason }) => reason === 'problem').length],
    ],
    {},
  );
  for (const machine of analysis.machines) writeMachine(report, machine);
  for (const machine of analysis.machines) {
    writeCrimps(report, machine);
    timeChart(report, machine);
    const dies = dieStrips(machine);
    if (dies.length > 0) dieChart(report, machine, dies);
    writeCharts(report, machine);
  }
  const last = report.row;
  return report.writer
    .widths(44, 190, 60, 80, 76, 76, 120, 60, 60, 64, 110, 40, 50, 50, 44)
    .page({
      orientation: 'landscape',
      printArea: addressOf({ row: 0, column: 0, rows: last, columns: READINGS_HEADINGS.length }),
      fitWidth: true,
    })
    .done();
}
