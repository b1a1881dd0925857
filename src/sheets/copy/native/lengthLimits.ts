import { din20066BoresUpToMm, din20066Lengths } from '../../../core/tables/din20066Lengths';
import { saeJ517Above, saeJ517Lengths } from '../../../core/tables/saeJ517Lengths';
import { LENGTH_RULES, usualLengthRule, type LengthRule } from '../../../core/length/lengthLimits';
import { Decimal } from '../../../core/units/decimal';
import { MM_PER_INCH, type LengthUnit } from '../../../core/units/lengthUnit';
import { blankKey, refusedNumber, rounded, rowFormula } from './conditions';
import { given, refuseMarks, type NativeArguments, type NativeFunction } from './nativeFunction';
import { stays, wordOf } from './words';

/** Deviations by DIN 20066, in millimetres; `length` and `bore` as the call has them. */
function dinDeviation(side: 'over' | 'under', length: string, bore: string, unit: LengthUnit): string {
  const lengthMm = unit === 'mm' ? length : rounded(`${length}*25.4`);
  const boreLimit = unit === 'mm' ? din20066BoresUpToMm[0] : new Decimal(din20066BoresUpToMm[0]).div(MM_PER_INCH);
  return [...din20066Lengths].reverse().reduce((beyond, band) => {
    const [small, large] = band[side];
    const share = small === large ? `${small}` : `IF(${bore}<=${boreLimit},${small},${large})`;
    const deviation = band.kind === 'mm' ? share : `${unit === 'mm' ? length : `${length}*25.4`}*${share}`;
    return beyond === '' || !Number.isFinite(Number(band.upToMm))
      ? deviation
      : `IF(${lengthMm}<=${band.upToMm},${deviation},${beyond})`;
  }, '');
}

/** Deviations by SAE J517, in inches or, where the call has millimetres, in these. */
function saeDeviation(length: string, unit: LengthUnit): string {
  const factor = unit === 'mm' ? MM_PER_INCH : new Decimal(1);
  const steps = new Decimal(1).div(saeJ517Above.toNearestIn);
  const perStep = new Decimal(saeJ517Above.toNearestIn).div(saeJ517Above.share).times(factor);
  const above = `ROUND(ROUND(${length}/${perStep},9),0)*${factor.div(steps)}`;
  return [...saeJ517Lengths]
    .reverse()
    .reduce((beyond, band) => `IF(${length}<=${factor.times(band.upToIn)},${factor.times(band.plusMinusIn)},${beyond})`, above);
}

function limitsRow(call: NativeArguments): string[] {
  const [length, bore, unitWord, ruleWord] = [given(call, 0), given(call, 1), given(call, 2), call[3]];
  const unit = wordOf(unitWord, ['mm', 'in'] as const);
  if (unit === 'mm') refuseMarks(call);
  const isRuleGiven = ruleWord && ruleWord.value !== '';
  const rule: LengthRule = isRuleGiven ? wordOf(ruleWord, LENGTH_RULES) : usualLengthRule(unit);
  const isDin = rule === 'DIN 20066';
  const last = new Decimal(din20066BoresUpToMm.at(-1)!);
  const refused = [
    ...refusedNumber(length, { sign: 'positive', mayBeDate: false }),
    ...refusedNumber(bore, { sign: 'positive', mayBeDate: true }),
    ...(isDin ? [`${bore.text}>${unit === 'mm' ? last : last.div(MM_PER_INCH)}`] : []),
  ];
  const ofCall = [...stays(unitWord, unit), ...stays(ruleWord, isRuleGiven ? rule : '')];
  const deviation = (side: 'over' | 'under') => {
    if (!isDin) return saeDeviation(length.text, unit);
    const inMm = dinDeviation(side, length.text, bore.text, unit);
    return unit === 'mm' ? inMm : `${inMm}/25.4`;
  };
  const shortest = rounded(`${length.text}-${deviation('under')}`);
  const longest = rounded(`${length.text}+${deviation('over')}`);
  return [shortest, longest].map(result => rowFormula(blankKey(length), refused, `IF(${shortest}<=0,NA(),${result})`, ofCall));
}

export const lengthLimits: NativeFunction = { arguments: ['number', 'number', 'word', 'word'], width: 2, row: limitsRow };
