import { TradeError } from '../../core/tradeError';
import { addressOf } from '../../workbook/a1';
import type { MachineReadings } from './analyseReadings';
import type { DieStrip } from './dieStrips';
import { timePicture } from './timePicture';
import { controlCharts, type ControlChart } from './controlChart';
import { signalTexts } from './controlText';
import { DIAMETER, SIGNED_DIAMETER, type Report } from './report';
import { DATE_FORMAT } from '../print/dateFormat';

const column = (first: number, rows: number, at: number) => addressOf({ row: first, column: at, rows, columns: 1 });

const nameOf = ({ machine }: MachineReadings) => machine || 'All crimps';

/** Lines of a chart of deviations; the machine's where its offset is known. */
const linesOf = (tolerance: number, offset: number | undefined): (readonly [string, number])[] => [
  ['Zero', 0],
  ['Lower tolerance', -tolerance],
  ['Upper tolerance', tolerance],
  ...(offset === undefined ? [] : [['Machine', offset] as const]),
];

/** Where the crimps that a strip chart shows are: first row, and the columns of deviation and strip. */
export interface CrimpsPlace {
  readonly first: number;
  readonly deviation: number;
  readonly strip: number;
}

/** The crimps of each die as a chart: one strip a die, with zero line, tolerance and the machine offset. */
export function dieChart(report: Report, machine: MachineReadings, dies: readonly DieStrip[]): void {
  const { tolerance, cause } = machine;
  const crimps = dies.flatMap(({ crimps: ofDie }, index) =>
    ofDie.map(({ measure, row }) => ['', '', measure.deviation.toNumber(), index + 1, row]),
  );
  report.title(`${nameOf(machine)}: crimps by die`);
  const headings = ['', '', `Deviation (${report.unit})`, 'Die strip', 'Row'];
  const first = report.table(headings, crimps, { 2: SIGNED_DIAMETER });
  const lines = linesOf(tolerance.toNumber(), cause.interval && cause.offset?.toNumber());
  const ends = [0.5, dies.length + 0.5];
  const rows = lines.flatMap(([name, at]) => ends.map(end => ['', name, at, end]));
  const start = report.table(['', 'Lines of the chart', `Deviation (${report.unit})`, 'Strip'], rows, { 2: SIGNED_DIAMETER });
  report.chart({
    title: `${nameOf(machine)}: deviations by die`,
    across: `Deviation (${report.unit})`,
    up: 'Strip (see the table of dies)',
    series: [
      { name: 'Crimps', x: column(first, crimps.length, 2), y: column(first, crimps.length, 3), looks: 'points' },
      ...lines.map(([name], index) => ({
        name,
        x: column(start + 2 * index, 2, 2),
        y: column(start + 2 * index, 2, 3),
        looks: 'line' as const,
      })),
    ],
  });
}

/** Deviations over time as a chart, with the offset of the machine between its changes; nothing where there are no dates. */
export function timeChart(report: Report, machine: MachineReadings): void {
  const picture = timePicture(machine);
  if (!picture) return;
  const { points, stretches } = picture;
  report.title(`${nameOf(machine)}: over time`);
  const rows = points.map(({ date, deviation, crimp }) => [date, crimp.combination, crimp.row, deviation, crimp.verdict]);
  const headings = ['Date', 'Combination', 'Row', `Deviation (${report.unit})`, 'Verdict'];
  const formats = { 0: DATE_FORMAT, 3: SIGNED_DIAMETER };
  const first = report.table(headings, rows, formats);
  const ends = stretches.flatMap((stretch, index) =>
    [stretch[0]!, stretch.at(-1)!].map(({ date, offset }) => [date, `Machine, stretch ${index + 1}`, '', offset]),
  );
  const span = [points[0]!.date, points.at(-1)!.date];
  const limits = linesOf(machine.tolerance.toNumber(), undefined).flatMap(([name, at]) => span.map(date => [date, name, '', at]));
  const start = report.table(['Date', 'Lines of the chart', '', `Deviation (${report.unit})`], [...limits, ...ends], formats);
  const names = [...linesOf(0, undefined).map(([name]) => name), ...stretches.map((_, index) => `Machine ${index + 1}`)];
  report.chart({
    title: `${nameOf(machine)}: deviations over time`,
    across: 'Date (number of the day)',
    up: `Deviation (${report.unit})`,
    series: [
      { name: 'Crimps', x: column(first, rows.length, 0), y: column(first, rows.length, 3), looks: 'points' },
      ...names.map((name, index) => ({
        name,
        x: column(start + 2 * index, 2, 0),
        y: column(start + 2 * index, 2, 3),
        looks: 'line' as const,
      })),
    ],
  });
}

/** The strip picture as a chart: one strip a combination, with zero line, tolerance and the machine offset. */
export function stripChart(report: Report, machine: MachineReadings, place: CrimpsPlace): void {
  const { combinations, cause, tolerance, crimps } = machine;
  const lines = linesOf(tolerance.toNumber(), cause.interval && cause.offset?.toNumber());
  const ends = [0.5, combinations.length + 0.5];
  const rows = lines.flatMap(([name, at]) => ends.map(end => ['', name, at, end]));
  const start = report.table(['', 'Lines of the chart', `Deviation (${report.unit})`, 'Strip'], rows, { 2: SIGNED_DIAMETER });
  report.chart({
    title: `${nameOf(machine)}: deviations by combination`,
    across: `Deviation (${report.unit})`,
    up: 'Strip (see the table of combinations)',
    series: [
      {
        name: 'Crimps',
        x: column(place.first, crimps.length, place.deviation),
        y: column(place.first, crimps.length, place.strip),
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
  report.title(`${nameOf(machine)}: ${name.toLowerCase()} chart`);
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
  const first = report.table(headings, rows, { 3: DIAMETER, 4: DIAMETER, 5: DIAMETER, 6: DIAMETER, 7: '@' });
  const range = (at: number) => column(first, rows.length, at);
  report.chart({
    title: `${nameOf(machine)}: ${name.toLowerCase()} chart`,
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

/** The control charts of a machine's crimps with their points, or why there are none. */
export function writeCharts(report: Report, machine: MachineReadings): void {
  try {
    for (const chart of controlCharts(machine.crimps, 'each').charts) chartTable(report, machine, chart);
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    report.title(`${nameOf(machine)}: no control chart`);
    report.lines(error.message);
  }
}
