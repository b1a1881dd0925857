import { TradeError } from '../../core/tradeError';
import { addressOf } from '../../workbook/a1';
import type { MachineReadings } from './analyseReadings';
import { controlCharts, type ControlChart } from './controlChart';
import { signalTexts } from './controlText';
import { DIAMETER, SIGNED_DIAMETER, type Report } from './report';

const column = (first: number, rows: number, at: number) => addressOf({ row: first, column: at, rows, columns: 1 });

/** Where the crimps that a strip chart shows stand: first row, and the columns of deviation and strip. */
export interface CrimpsPlace {
  readonly first: number;
  readonly deviation: number;
  readonly strip: number;
}

/** The strip picture as a chart: one strip a combination, with zero line, tolerance and what the machine adds to all. */
export function stripChart(report: Report, machine: MachineReadings, place: CrimpsPlace): void {
  const { combinations, cause, tolerance, crimps } = machine;
  const lines: (readonly [string, number])[] = [
    ['Zero', 0],
    ['Lower tolerance', -tolerance.toNumber()],
    ['Upper tolerance', tolerance.toNumber()],
    ...(cause.interval && cause.offset ? [['Machine', cause.offset.toNumber()] as const] : []),
  ];
  const ends = [0.5, combinations.length + 0.5];
  const rows = lines.flatMap(([name, at]) => ends.map(end => ['', name, at, end]));
  const start = report.table(['', 'Lines of the chart', `Deviation (${report.unit})`, 'Strip'], rows, { 2: SIGNED_DIAMETER });
  report.chart({
    title: `${machine.machine || 'All crimps'}: deviations by combination`,
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
  const first = report.table(headings, rows, { 3: DIAMETER, 4: DIAMETER, 5: DIAMETER, 6: DIAMETER, 7: '@' });
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

/** The control charts of a machine's crimps with their points, or why there are none. */
export function writeCharts(report: Report, machine: MachineReadings): void {
  try {
    for (const chart of controlCharts(machine.crimps, 'each').charts) chartTable(report, machine, chart);
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    report.title(`${machine.machine || 'All crimps'}: no control chart`);
    report.lines(error.message);
  }
}
