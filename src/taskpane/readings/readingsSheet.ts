import { isoDate } from '../../core/catalogue/dayNumber';
import { TradeError } from '../../core/tradeError';
import type { Change } from '../../host/workbook';
import { addressOf } from '../../host/a1';
import { Report } from './report';
import { SheetWriter, type WrittenCell } from '../sheets/sheetWriter';
import { VERDICTS, type JudgedCrimp, type MachineReadings } from './analyseReadings';
import type { Analysed } from './analysisOf';
import { CAPABILITY_WORDS, capabilityOf } from './capabilityOf';
import { controlCharts, type ControlChart } from './controlChart';
import { signalTexts } from './controlText';
import { findingText } from './findingText';
import { responseText } from './responseText';

const NUMBER = '0.000';
const SIGNED = '+0.000;-0.000;0.000';

/** Where the numbers come from and when they were written. */
export interface SheetOrigin {
  readonly source: string;
  readonly today: string;
}

const CRIMP_HEADINGS = [
  'No.',
  'Combination',
  'Row',
  'Date',
  'Mean',
  'Deviation',
  'Verdict',
  'Spread',
  'Target',
  'Tolerance',
  'Machine',
  'End',
  'Die',
  'Dial',
  'Strip',
] as const;
const DEVIATION_COLUMN = CRIMP_HEADINGS.indexOf('Deviation');
const STRIP_COLUMN = CRIMP_HEADINGS.indexOf('Strip');

const column = (first: number, rows: number, at: number) => addressOf({ row: first, column: at, rows, columns: 1 });

function crimpRow(crimp: JudgedCrimp, index: number, strip: number): WrittenCell[] {
  const { row, date, machine, combination, end, die, dial, target, tolerance, measure, verdict } = crimp;
  const day = date === undefined ? '' : isoDate(date);
  const [mean, deviation, spread, wanted, allowed] = [measure.mean, measure.deviation, measure.spread, target, tolerance].map(
    value => value.toNumber(),
  ) as [number, number, number, number, number];
  const made = [machine, end, die, dial?.toNumber() ?? ''];
  return [index + 1, combination, row, day, mean, deviation, verdict, spread, wanted, allowed, ...made, strip];
}

/** The strip picture as a chart: one strip a combination, with zero line, tolerance and what the machine adds to all. */
function stripChart(report: Report, machine: MachineReadings, first: number): void {
  const { combinations, cause, tolerance, crimps } = machine;
  const lines: (readonly [string, number])[] = [
    ['Zero', 0],
    ['Lower tolerance', -tolerance.toNumber()],
    ['Upper tolerance', tolerance.toNumber()],
    ...(cause.interval && cause.offset ? [['Machine', cause.offset.toNumber()] as const] : []),
  ];
  const ends = [0.5, combinations.length + 0.5];
  const rows = lines.flatMap(([name, at]) => ends.map(end => ['', name, at, end]));
  const start = report.table(['', 'Lines of the chart', `Deviation (${report.unit})`, 'Strip'], rows, { 2: SIGNED });
  report.chart({
    title: `${machine.machine || 'All crimps'}: deviations by combination`,
    across: `Deviation (${report.unit})`,
    up: 'Strip (see the table of combinations)',
    series: [
      {
        name: 'Crimps',
        x: column(first, crimps.length, DEVIATION_COLUMN),
        y: column(first, crimps.length, STRIP_COLUMN),
        looks: 'points',
      },
      ...lines.map(([name], index) => ({
        name,
        x: column(start + 2 * index, 2, 2),
        y: column(start + 2 * index, 2, 3),
        looks: 'line' as const,
      })),
    ],
  });
}

function chartTable(report: Report, machine: MachineReadings, chart: ControlChart): void {
  const { chart: name, lower, centre, upper } = chart.limits;
  report.title(`${machine.machine || 'All crimps'}: ${name.toLowerCase()} chart`);
  const signals = signalTexts(chart, report.unit);
  report.lines(signals.length === 0 ? 'No signals.' : `${signals.length} points with a signal.`);
  const rows = chart.points.map(({ place, crimp, value, rules }) => [
    place,
    crimp.combination,
    crimp.row,
    value,
    lower,
    centre,
    upper,
    rules.join(' '),
  ]);
  const headings = ['Point', 'Combination', 'Row', `${name} (${report.unit})`, 'Lower', 'Centre', 'Upper', 'Rules'];
  const first = report.table(headings, rows, { 3: NUMBER, 4: NUMBER, 5: NUMBER, 6: NUMBER, 7: '@' });
  const range = (at: number) => column(first, rows.length, at);
  report.chart({
    title: `${machine.machine || 'All crimps'}: ${name.toLowerCase()} chart`,
    across: 'In the order made',
    up: `${name} (${report.unit})`,
    series: [
      { name, x: range(0), y: range(3), looks: 'points and line' },
      { name: 'Lower', x: range(0), y: range(4), looks: 'line' },
      { name: 'Centre', x: range(0), y: range(5), looks: 'line' },
      { name: 'Upper', x: range(0), y: range(6), looks: 'line' },
    ],
  });
}

function writeCharts(report: Report, machine: MachineReadings): void {
  try {
    for (const chart of controlCharts(machine.crimps, 'each').charts) chartTable(report, machine, chart);
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    report.title(`${machine.machine || 'All crimps'}: no control chart`);
    report.lines(error.message);
  }
}

function writeMachine(report: Report, machine: MachineReadings): void {
  const { combinations, cause, crimps, tolerance } = machine;
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
  report.table(headings, [total, ...rows], { 4: SIGNED, 5: SIGNED });
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

function writeCrimps(report: Report, machine: MachineReadings): void {
  report.title(`${machine.machine || 'All crimps'}: crimps in the order made (diameters in ${report.unit})`);
  const strips = new Map(machine.combinations.flatMap(({ crimps }, index) => crimps.map(crimp => [crimp, index + 1] as const)));
  const rows = machine.crimps.map((crimp, index) => crimpRow(crimp, index, strips.get(crimp)!));
  const formats = { 3: '@', 4: NUMBER, 5: SIGNED, 7: NUMBER, 8: NUMBER, 9: NUMBER };
  const first = report.table(CRIMP_HEADINGS, rows, formats);
  stripChart(report, machine, first);
}

/**
 * A new sheet with the results as values, and charts of the host's own beside them.
 * @param sheet a name that is not taken
 */
export function readingsSheet(sheet: string, { analysis, measurements, unit }: Analysed, origin: SheetOrigin): readonly Change[] {
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
      ['', 'not measured yet', measurements.waiting.length],
      ['', 'cannot be used', measurements.problems.length],
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
