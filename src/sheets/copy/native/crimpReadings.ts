import { refusedNumber, rounded, rowFormula, type NumberLimits } from './conditions';
import { given, type NativeArgument, type NativeArguments } from './nativeFunction';
import { NotNative } from '../notNative';

const DIAMETER: NumberLimits = { sign: 'positive', mayBeDate: true };

/** A crimp's readings, target and tolerance, and what is made of them; all as expressions. */
export interface NativeCrimp {
  readonly readings: NativeArgument;
  readonly target: NativeArgument;
  readonly tolerance: NativeArgument;
  /** Sum of the readings less as many targets. */
  readonly deviationSum: string;
  readonly spread: string;
  /** Above 0 where the mean is out of spec. */
  readonly beyond: string;
}

/** The tolerance must be able to belong to its target: 1/2000 … 1/10 of it. */
export function refusedTolerance(target: string, tolerance: string): string[] {
  return [`${rounded(`2000*${tolerance}-${target}`)}<0`, `${rounded(`10*${tolerance}-${target}`)}>0`];
}

/** Readings that cannot be: outside 0.8 … 1.25 of the target, or too far from the median of the crimp. */
function refusedReadings(readings: string, target: string, tolerance: string): string[] {
  const apart = `MAX(MAX(${readings})-MEDIAN(${readings}),MEDIAN(${readings})-MIN(${readings}))`;
  return [
    `${rounded(`MIN(${readings})-0.8*${target}`)}<0`,
    `${rounded(`MAX(${readings})-1.25*${target}`)}>0`,
    `${rounded(`${apart}-MAX(10*${tolerance},0.02*${target})`)}>0`,
  ];
}

export function nativeCrimp(call: NativeArguments, first: number): NativeCrimp {
  const [readings, target, tolerance] = [given(call, first), given(call, first + 1), given(call, first + 2)];
  if (readings.count < 2) throw new NotNative('the readings of a crimp do not lie side by side');
  const deviationSum = `SUM(${readings.text})-${readings.count}*${target.text}`;
  return {
    readings,
    target,
    tolerance,
    deviationSum,
    spread: `MAX(${readings.text})-MIN(${readings.text})`,
    beyond: rounded(`ABS(${deviationSum})-${readings.count}*${tolerance.text}`),
  };
}

/** Conditions under which a crimp is refused. */
function refusedCrimp({ readings, target, tolerance }: NativeCrimp): string[] {
  const r = readings.text;
  return [
    `COUNT(${r})<${readings.count}`,
    ...refusedNumber(target, DIAMETER),
    ...refusedNumber(tolerance, DIAMETER),
    ...refusedTolerance(target.text, tolerance.text),
    ...refusedReadings(r, target.text, tolerance.text),
  ];
}

/** The row's formula: blank while no reading is there (some hosts deliver blanks as 0). */
export function crimpFormula(
  crimp: NativeCrimp,
  result: string,
  ofCall: readonly string[],
  refused: readonly string[] = [],
): string {
  const { text, count } = crimp.readings;
  return rowFormula(`COUNTBLANK(${text})+COUNTIF(${text},0)=${count}`, [...refusedCrimp(crimp), ...refused], result, ofCall);
}
