import { isoDate } from '../../core/units/sheetDate';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { RULE_WORDS, type ChartPoint, type ControlChart, type ChartsOfRun } from './controlChart';
import { MOST_DRAWN } from './mostDrawn';
import { deviationText } from './diameterText';

/** Points that make limits firm. Source: common practice, 20 to 25 subgroups; e-Handbook 6.3.2. */
const FIRM = 20;

/** Which crimp a point stands for. */
export function pointText({ crimp }: Pick<ChartPoint, 'crimp'>): string {
  const date = crimp.date === undefined ? '' : `, ${isoDate(crimp.date)}`;
  return `row ${crimp.row}${date}, ${crimp.combination}`;
}

const isRange = ({ limits }: ControlChart) => limits.chart === 'Range' || limits.chart === 'Moving range';

/** A height on a chart: ranges have no sign. */
function heightText(chart: ControlChart, value: number, unit: LengthUnit): string {
  const text = deviationText(value, unit, true);
  return isRange(chart) ? text.replace(/^\+/, '') : text;
}

/** Points with a signal, a sentence each: the picture's text equivalent. */
export function signalTexts(chart: ControlChart, unit: LengthUnit): string[] {
  return chart.points
    .filter(({ rules }) => rules.length > 0)
    .map(point => {
      const words = point.rules.map(rule => `${RULE_WORDS[rule]} (${rule})`).join('; ');
      return `${chart.limits.chart} ${heightText(chart, point.value, unit)}, ${pointText(point)}: ${words}`;
    });
}

/** The limits of a chart in a sentence. */
export function controlLimitsText(chart: ControlChart, unit: LengthUnit): string {
  const { limits, points } = chart;
  const [lower, centre, upper] = [limits.lower, limits.centre, limits.upper].map(value => heightText(chart, value, unit));
  return `${limits.chart}: ${points.length} points, centre ${centre} ${unit}, limits ${lower} and ${upper}.`;
}

/** What to bear in mind with charts of so few points, or of readings round one crimp. */
export function chartNotes({ charts, leftOut }: ChartsOfRun, ofReadings: boolean): string[] {
  const points = charts[0]!.points.length;
  const left = leftOut === 1 ? '1 crimp does not fill a subgroup and is' : `${leftOut} crimps do not fill a subgroup and are`;
  return [
    ...(points > MOST_DRAWN ? [`The newest ${MOST_DRAWN} of ${points} points are drawn; the limits come from all.`] : []),
    ...(points < FIRM ? [`Limits from ${points} points are a first guess: ${FIRM} or more make them firm.`] : []),
    ...(ofReadings
      ? ['These limits come from readings round one crimp: they show caliper and roundness, and crimps scatter more than that.']
      : []),
    ...(leftOut > 0 ? [`${left} on no chart.`] : []),
  ];
}
