import { isoDate } from '../../core/units/sheetDate';
import type { WrittenCell } from '../print/sheetWriter';
import type { MachineReadings } from './analyseReadings';
import type { JudgedCrimp } from './judgedCrimp';
import { stripChart } from './readingsCharts';
import { DIAMETER, SIGNED_DIAMETER, type Report } from './report';

export const READINGS_HEADINGS = [
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
const DEVIATION_COLUMN = READINGS_HEADINGS.indexOf('Deviation');
const STRIP_COLUMN = READINGS_HEADINGS.indexOf('Strip');

function crimpRow(crimp: JudgedCrimp, index: number, strip: number): WrittenCell[] {
  const { row, date, machine, combination, end, die, dial, target, tolerance, measure, verdict } = crimp;
  const day = date === undefined ? '' : isoDate(date);
  const [mean, deviation, spread, wanted, allowed] = [measure.mean, measure.deviation, measure.spread, target, tolerance].map(
    value => value.toNumber(),
  ) as [number, number, number, number, number];
  const made = [machine, end, die, dial?.toNumber() ?? ''];
  return [index + 1, combination, row, day, mean, deviation, verdict, spread, wanted, allowed, ...made, strip];
}

/** Every crimp of a machine in a row of its own, and their strip chart. */
export function writeCrimps(report: Report, machine: MachineReadings): void {
  report.title(`${machine.machine || 'All crimps'}: crimps in the order made (diameters in ${report.unit})`);
  const strips = new Map(machine.combinations.flatMap(({ crimps }, index) => crimps.map(crimp => [crimp, index + 1] as const)));
  const rows = machine.crimps.map((crimp, index) => crimpRow(crimp, index, strips.get(crimp)!));
  const formats = { 3: '@', 4: DIAMETER, 5: SIGNED_DIAMETER, 7: DIAMETER, 8: DIAMETER, 9: DIAMETER };
  const first = report.table(READINGS_HEADINGS, rows, formats);
  stripChart(report, machine, { first, deviation: DEVIATION_COLUMN, strip: STRIP_COLUMN });
}
