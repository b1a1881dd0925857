import { dot, line, plot, ruleX, ruleY, text } from '@observablehq/plot';
import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { isoDate } from '../../core/units/sheetDate';
import type { MachineReadings } from '../../sheets/analysis/analyseReadings';
import { deviationText } from '../../sheets/analysis/diameterText';
import { timePicture, type TimePoint } from '../../sheets/analysis/timePicture';
import { SHAPES } from './crimpDots';
import { BAD, GOOD, INK } from './plotColours';

const HEIGHT = 210;
/** So many newest crimps are drawn: more would only hide each other. */
const MOST = 600;

/** Deviations over time: tolerance band, the machine offset between its changes, and each change as a line with its day. */
export function timePlot(machine: MachineReadings, unit: LengthUnit, width: number): Element {
  const picture = timePicture(machine)!;
  const points = picture.points.slice(-MOST);
  const { stretches, changes, epoch } = picture;
  const tolerance = machine.tolerance.toNumber();
  const marks = [
    ...changes.map(date => ({ date, name: `change ${isoDate(date)}` })),
    ...(epoch === undefined ? [] : [{ date: epoch, name: `counted from ${isoDate(epoch)}` }]),
  ];
  const dots = (verdict: CrimpVerdict, isCurrent: boolean) =>
    dot(
      points.filter(point => point.crimp.verdict === verdict && point.isCurrent === isCurrent),
      {
        x: 'date',
        y: 'deviation',
        ...SHAPES[verdict],
        r: 2.6,
        fill: isCurrent ? (verdict === 'IN SPEC' ? GOOD : BAD) : 'none',
        stroke: verdict === 'IN SPEC' ? GOOD : BAD,
        title: ({ crimp, date, deviation }: TimePoint) =>
          `row ${crimp.row}, ${isoDate(date)}: ${deviationText(deviation, unit, true)} ${unit}, ${crimp.combination}, ${verdict}`,
      },
    );
  return plot({
    width,
    height: HEIGHT,
    marginLeft: 44,
    marginRight: 20,
    marginTop: 18,
    marginBottom: 34,
    style: { background: 'transparent', color: INK, fontSize: '11px', fontFamily: 'inherit', overflow: 'visible' },
    x: {
      label: 'day made',
      labelAnchor: 'center',
      labelArrow: 'none',
      ticks: Math.max(2, Math.floor(width / 90)),
      tickFormat: (value: number) => isoDate(value).slice(5),
    },
    y: { label: null, ticks: 5, tickFormat: (value: number) => deviationText(value, unit) },
    marks: [
      ruleY([-tolerance, tolerance], { stroke: INK, strokeDasharray: '2,2' }),
      ruleY([0], { stroke: INK }),
      ...(Object.keys(SHAPES) as CrimpVerdict[]).flatMap(verdict => [dots(verdict, false), dots(verdict, true)]),
      ruleX(marks, { x: 'date', stroke: INK, strokeWidth: 1.6, strokeDasharray: '7,3' }),
      text(marks, {
        x: 'date',
        frameAnchor: 'top',
        dy: -12,
        text: 'name',
        fill: INK,
        stroke: 'var(--picture-back)',
        strokeWidth: 3,
      }),
      ...stretches.map(stretch => line(stretch, { x: 'date', y: 'offset', stroke: INK, strokeWidth: 2.5 })),
    ],
  });
}
