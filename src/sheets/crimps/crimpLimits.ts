import { requirePlausibleTolerance } from '../../core/crimp/crimpTolerance';
import { TradeError } from '../../core/tradeError';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import type { CrimpData } from './crimpData';
import { smallText } from '../table/smallText';
import type { CrimpReadOptions, TypedName } from './crimpReadOptions';
import type { CrimpProblem, Sourced } from './crimpRow';
import { OPEN_UNIT, type CrimpRowReader } from './crimpRowReader';
import type { SettingsAbove } from './settingsAbove';
import { toleranceAdvice } from './toleranceAdvice';
import type { TableQuestion } from '../table/tableQuestion';
import { cellAddress } from '../../workbook/a1';

/** Where the numbers of a row may come from, besides its own cells. */
export interface NumberSources {
  readonly above: SettingsAbove;
  readonly data: CrimpData;
  readonly options: CrimpReadOptions;
  readonly unit: LengthUnit;
}

type LengthName = 'target' | 'tolerance' | 'largestSpread' | 'step';
type DialName = 'lowest' | 'highest' | 'largestMove';

const typedOf = ({ typed }: CrimpReadOptions, name: TypedName): Sourced | undefined =>
  typed[name] && { value: typed[name], from: 'your setting' };

function aboveOf({ above, unit }: NumberSources, name: LengthName | DialName): Sourced | undefined {
  if (name === 'lowest' || name === 'highest' || name === 'largestMove')
    return above.dials[name] && { value: above.dials[name], from: 'above the table' };
  const length = above.lengths[name];
  return length && { value: lengthIn(length, unit), from: 'above the table' };
}

/** A number of a row: its own cell, else above the table, else the catalogue, else what somebody typed. */
function numberOf(own: Sourced | undefined, name: LengthName | DialName, sources: NumberSources): Sourced | undefined {
  return own ?? aboveOf(sources, name) ?? sources.data[name] ?? typedOf(sources.options, name);
}

/** The limits of a row, as they are judged by. */
export interface CrimpLimits {
  readonly target: Sourced | undefined;
  readonly tolerance: Sourced | undefined;
  readonly largestSpread: Sourced | undefined;
}

const isAlike = (one: Sourced | undefined, other: Sourced | undefined, { unit }: NumberSources) =>
  !one || !other || smallText(one.value, unit) === smallText(other.value, unit);

/** Half of a tolerance that is given from limit to limit. */
function halfWidth(reader: CrimpRowReader): Sourced | undefined {
  const width = reader.length('toleranceWidth');
  return width && { value: width.value.div(2), from: `half of ${width.from}` };
}

/** What a crimp is judged by, and what stands against it. */
interface FoundLimits {
  readonly limits: CrimpLimits;
  /** What must be answered before they count. */
  readonly question?: TableQuestion | undefined;
  /** What of the row contradicts itself. */
  readonly conflict?: string | undefined;
}

/** Smallest and largest diameter as what is judged by. */
function middleAndHalf(smallest: Sourced, largest: Sourced) {
  return {
    middle: { value: smallest.value.plus(largest.value).div(2), from: smallest.from },
    half: { value: largest.value.minus(smallest.value).div(2), from: smallest.from },
  };
}

/**
 * Limits of the diameter beside a target or a tolerance of the same row. The limits say what is in spec: a target that is not in their middle gives way
 * to it, with a note; what fits them in no way is a contradiction.
 */
function besideOwn(
  reader: CrimpRowReader,
  own: Pick<CrimpLimits, 'target' | 'tolerance'>,
  [smallest, largest]: readonly [Sourced, Sourced],
  sources: NumberSources,
): Pick<FoundLimits, 'conflict'> & Pick<CrimpLimits, 'target' | 'tolerance'> {
  const { middle, half } = middleAndHalf(smallest, largest);
  const text = ({ value }: Sourced) => smallText(value, sources.unit);
  const both = `${text(smallest)} … ${text(largest)}`;
  const { target, tolerance } = own;
  const isMiddle = isAlike(target, middle, sources);
  if (tolerance && !isAlike(tolerance, half, sources))
    return {
      ...own,
      conflict: `the tolerance ${text(tolerance)} (${tolerance.from}) does not fit the limits ${both}: correct one of them`,
    };
  if (target && (target.value.lt(smallest.value) || target.value.gt(largest.value)))
    return {
      ...own,
      conflict: `the target ${text(target)} (${target.from}) is not within the limits ${both}: correct one of them`,
    };
  if (target && tolerance && !isMiddle)
    return { ...own, conflict: `${text(target)} ± ${text(tolerance)} are not the limits ${both}: correct one of them` };
  if (target && !isMiddle)
    reader.notes.push(
      `Limits ${both} are not the same distance from the target ${text(target)}: crimps are judged by them, from their middle ${text(middle)}.`,
    );
  return { target: isMiddle ? (target ?? middle) : middle, tolerance: tolerance ?? half };
}

/** Target, tolerance and largest spread of a row; limits of the diameter give their middle and half their distance. */
export function crimpLimits(reader: CrimpRowReader, sources: NumberSources): FoundLimits {
  const own = { target: reader.length('target'), tolerance: reader.length('tolerance') ?? halfWidth(reader) };
  const others = {
    target: numberOf(own.target, 'target', sources),
    tolerance: numberOf(own.tolerance, 'tolerance', sources),
    largestSpread: numberOf(reader.length('largestSpread'), 'largestSpread', sources),
  };
  const { bareLimits: bare } = reader;
  if (own.target && own.tolerance && bare) return { limits: others };
  const [smallest, largest] = [reader.length('smallest'), reader.length('largest')];
  if (!smallest || !largest) return { limits: others };
  if (!bare) {
    const { conflict, ...judged } = besideOwn(reader, own, [smallest, largest], sources);
    return { limits: { ...others, ...judged }, conflict };
  }
  const { middle, half } = middleAndHalf(smallest, largest);
  const limits = { ...others, target: own.target ?? middle, tolerance: own.tolerance ?? half };
  // What is typed in the pane counts only where the sheet says nothing.
  const sure = { ...sources, options: { ...sources.options, typed: {} } };
  const [target, tolerance] = [numberOf(own.target, 'target', sure), numberOf(own.tolerance, 'tolerance', sure)];
  if (bare.meaning === 'either' && target && tolerance) {
    reader.notes.push(`${bare.named} may be limits or readings and do not count: choose it under “Columns read”.`);
    return { limits: others };
  }
  const isAgreed = isAlike(limits.target, target, sources) && isAlike(limits.tolerance, tolerance, sources);
  return { limits, question: bare.meaning === 'limits' && isAgreed ? undefined : bare.question };
}

/** What is known of the machine's dial. */
export function machineNumbers(reader: CrimpRowReader, sources: NumberSources) {
  const digits = (name: DialName) => numberOf(reader.digits(name), name, sources);
  return {
    dial: reader.digits('dial'),
    wantedDial: sources.data.dial,
    step: numberOf(reader.length('step', 'any'), 'step', sources),
    lowest: digits('lowest'),
    highest: digits('highest'),
    largestMove: digits('largestMove'),
  };
}

/** What of the sheet and of the catalogue does not agree: the sheet counts. */
export function disagreements(own: CrimpLimits, data: CrimpData, unit: LengthUnit): string[] {
  return (['target', 'tolerance'] as const).flatMap(name => {
    const [sheet, catalogue] = [own[name], data[name]];
    const [one, other] = [sheet, catalogue].map(each => each && smallText(each.value, unit));
    if (!sheet || !catalogue || one === other) return [];
    return [`The ${name} here is ${one} (${sheet.from}), the Catalogue says ${other}: the sheet’s counts.`];
  });
}

const OPEN_LIMITS = 'it is not known whether Min and Max are its limits: answer the question about them';
const ADVICE = 'no column, no cell above the table and no crimp data give it: enter it under Limits and machine';

/** Why a crimp cannot be judged; undefined where it can. */
export function limitsProblem(
  reader: CrimpRowReader,
  { limits, question, conflict }: FoundLimits,
  data: CrimpData,
  isUnitKnown: boolean,
): CrimpProblem | undefined {
  const { crimp } = reader;
  const at = cellAddress(crimp.readings[0]!);
  const end = crimp.end ? `end ${crimp.end}: ` : '';
  if (!isUnitKnown) return { at, sentence: OPEN_UNIT };
  if (reader.problem) return reader.problem;
  if (conflict) return { at, sentence: `${end}${conflict}` };
  if (question) return { at, sentence: `${end}${OPEN_LIMITS}`, question };
  const { target, tolerance } = limits;
  // A tolerance of the row that cannot be used is not passed over for one from elsewhere.
  const unused = tolerance?.from.includes('column') ? undefined : toleranceAdvice(reader.headings);
  const missing = !target ? 'target' : !tolerance || unused ? 'tolerance' : undefined;
  const advice = (target && unused) ?? data.problem ?? ADVICE;
  if (missing) return { at, sentence: `${end}${missing} is not known: ${advice}` };
  try {
    requirePlausibleTolerance(target!.value, tolerance!.value);
    return undefined;
  } catch (error) {
    if (error instanceof TradeError) return { at, sentence: `${end}${error.message}` };
    throw error;
  }
}
