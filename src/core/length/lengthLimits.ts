import { din20066BoresUpToMm, din20066Lengths } from '../tables/din20066Lengths';
import { saeJ517Above, saeJ517Lengths } from '../tables/saeJ517Lengths';
import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import { convertLength, type LengthUnit } from '../units/lengthUnit';

/** Published rules for the length of an assembly. */
export const LENGTH_RULES = ['DIN 20066', 'SAE J517'] as const;
export type LengthRule = (typeof LENGTH_RULES)[number];

/** The rule that is usual for a unit. */
export function usualLengthRule(unit: LengthUnit): LengthRule {
  return unit === 'mm' ? 'DIN 20066' : 'SAE J517';
}

/** Allowed deviations from the overall length, both counted positive. */
interface Deviations {
  readonly over: Decimal;
  readonly under: Decimal;
}

function dinDeviations(overallMm: Decimal, bore: Decimal, unit: LengthUnit): Deviations {
  const boreMm = convertLength(bore, unit, 'mm');
  const boreBand = din20066BoresUpToMm.findIndex(upTo => boreMm.lte(upTo));
  if (boreBand < 0) {
    const received = unit === 'mm' ? `is ${bore} mm` : `is ${bore} in (${boreMm.toDecimalPlaces(3)} mm)`;
    throw new TradeError('range', 'bore', received, 'DIN 20066 ends at DN 50 (bore 50.8 mm); agree the limits in writing');
  }
  const band = din20066Lengths.find(({ upToMm }) => overallMm.lte(upToMm))!;
  const whole = band.kind === 'mm' ? new Decimal(1) : overallMm;
  return { over: whole.times(band.over[boreBand as 0 | 1]), under: whole.times(band.under[boreBand as 0 | 1]) };
}

function saeDeviations(overallIn: Decimal): Deviations {
  const band = saeJ517Lengths.find(({ upToIn }) => overallIn.lte(upToIn));
  const deviation = band
    ? new Decimal(band.plusMinusIn)
    : overallIn.times(saeJ517Above.share).toNearest(saeJ517Above.toNearestIn, Decimal.ROUND_HALF_UP);
  return { over: deviation, under: deviation };
}

/**
 * Shortest and longest finished length of an assembly by a published rule.
 * @param overall overall length, in `unit`
 * @param bore the hose's inside diameter, in `unit`
 * @param unit unit of both and of the result; the rule's own bands are converted
 * @throws TradeError `range` where DIN 20066 has no band for the bore; `impossible` where the tolerance leaves no length
 * Source: see the tables (both recalled from memory).
 * @example lengthLimits(new Decimal(1000), new Decimal(12.7), 'mm', 'DIN 20066') // 996 … 1012
 */
export function lengthLimits(
  overall: Decimal,
  bore: Decimal,
  unit: LengthUnit,
  rule: LengthRule,
): { shortest: Decimal; longest: Decimal } {
  const native: LengthUnit = rule === 'DIN 20066' ? 'mm' : 'in';
  const length = convertLength(overall, unit, native);
  const { over, under } = rule === 'DIN 20066' ? dinDeviations(length, bore, unit) : saeDeviations(length);
  const shortest = overall.minus(convertLength(under, native, unit));
  if (shortest.lte(0)) {
    throw new TradeError(
      'impossible',
      'overall length',
      `is ${overall} ${unit}`,
      `that is shorter than its own tolerance in ${rule}; check length and unit`,
    );
  }
  return { shortest, longest: overall.plus(convertLength(over, native, unit)) };
}
