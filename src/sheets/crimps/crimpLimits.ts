import { requirePlausibleTolerance } from '../../core/crimp/crimpTolerance';
import { TradeError } from '../../core/tradeError';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import type { CrimpData } from './crimpData';
import { smallText } from '../table/smallText';
import type { CrimpReadOptions, TypedName } from './crimpReadOptions';
import type { CrimpProblem, Sourced } from './crimpRow';
import { OPEN_UNIT, type CrimpRowReader } from './crimpRowReader';
import type { SettingsAbove } from './settingsAbove';
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

/** Target, tolerance and largest spread of a row; limits of the diameter give their middle and half their distance. */
export function crimpLimits(reader: CrimpRowReader, sources: NumberSources) {
  const [smallest, largest] = [reader.length('smallest'), reader.length('largest')];
  const middle = smallest && largest && { value: smallest.value.plus(largest.value).div(2), from: smallest.from };
  const half = smallest && largest && { value: largest.value.minus(smallest.value).div(2), from: smallest.from };
  return {
    target: numberOf(reader.length('target') ?? middle, 'target', sources),
    tolerance: numberOf(reader.length('tolerance') ?? half, 'tolerance', sources),
    largestSpread: numberOf(reader.length('largestSpread'), 'largestSpread', sources),
  };
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

type Limits = ReturnType<typeof crimpLimits>;

/** What of the sheet and of the catalogue does not agree: the sheet counts. */
export function disagreements(own: Limits, data: CrimpData, unit: LengthUnit): string[] {
  return (['target', 'tolerance'] as const).flatMap(name => {
    const [sheet, catalogue] = [own[name], data[name]];
    const [one, other] = [sheet, catalogue].map(each => each && smallText(each.value, unit));
    if (!sheet || !catalogue || one === other) return [];
    return [`The ${name} here is ${one} (${sheet.from}), the Catalogue says ${other}: the sheet’s counts.`];
  });
}

const ADVICE = 'no column, no cell above the table and no crimp data give it: enter it under Limits and machine';

/** Why a crimp cannot be judged; undefined where it can. */
export function limitsProblem(
  reader: CrimpRowReader,
  limits: Limits,
  data: CrimpData,
  isUnitKnown: boolean,
): CrimpProblem | undefined {
  const { crimp } = reader;
  const at = cellAddress(crimp.readings[0]!);
  const end = crimp.end ? `end ${crimp.end}: ` : '';
  if (!isUnitKnown) return { at, sentence: OPEN_UNIT };
  if (reader.problem) return reader.problem;
  const { target, tolerance } = limits;
  const missing = !target ? 'target' : !tolerance ? 'tolerance' : undefined;
  if (missing) return { at, sentence: `${end}${missing} is not known: ${data.problem ?? ADVICE}` };
  try {
    requirePlausibleTolerance(target!.value, tolerance!.value);
    return undefined;
  } catch (error) {
    if (error instanceof TradeError) return { at, sentence: `${end}${error.message}` };
    throw error;
  }
}
