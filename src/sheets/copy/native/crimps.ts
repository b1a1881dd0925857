import { blankKey, ifThere, orZero, refusedNumber, refusedOptional, rounded, rowFormula } from './conditions';
import { crimpFormula, nativeCrimp, refusedTolerance, type NativeCrimp } from './crimpReadings';
import { given, type NativeArgument, type NativeFunction } from './nativeFunction';

/** The verdict without uncertainty. */
function verdict({ beyond, deviationSum, spread }: NativeCrimp, maxSpread: NativeArgument | undefined): string {
  const inSpec = ifThere(maxSpread, `IF(${rounded(`${spread}-${orZero(maxSpread)}`)}>0,"OVAL","IN SPEC")`, '"IN SPEC"');
  return `IF(${beyond}>0,IF(${deviationSum}<0,"TIGHT","LOOSE"),${inSpec})`;
}

const SPREAD = { sign: 'notNegative', mayBeDate: true } as const;

export const crimpCheck: NativeFunction = {
  arguments: ['readings', 'number', 'number', 'number', 'number'],
  width: 1,
  row(call) {
    const crimp = nativeCrimp(call, 0);
    const { readings, tolerance, deviationSum } = crimp;
    const [uncertainty, maxSpread] = [call[3], call[4]];
    const nearLimit = `ABS(ABS(${deviationSum})-${readings.count}*${tolerance.text})-${readings.count}*${orZero(uncertainty)}`;
    const sure = verdict(crimp, maxSpread);
    const result = ifThere(uncertainty, `IF(${rounded(nearLimit)}<0,"UNSURE",${sure})`, sure);
    return [crimpFormula(crimp, result, [...refusedOptional(uncertainty, SPREAD), ...refusedOptional(maxSpread, SPREAD)])];
  },
};

export const crimpDetail: NativeFunction = {
  arguments: ['readings', 'number', 'number', 'number'],
  width: 4,
  row(call) {
    const crimp = nativeCrimp(call, 0);
    const { readings, deviationSum, spread } = crimp;
    const refused = refusedOptional(call[3], SPREAD);
    const results = [
      rounded(`AVERAGE(${readings.text})`),
      rounded(`(${deviationSum})/${readings.count}`),
      rounded(spread),
      verdict(crimp, call[3]),
    ];
    return results.map(result => crimpFormula(crimp, result, refused));
  },
};

export const conformity: NativeFunction = {
  arguments: ['number', 'number', 'number', 'number'],
  width: 1,
  row(call) {
    const [mean, target, tolerance, uncertainty] = [0, 1, 2, 3].map(index => given(call, index)) as [
      NativeArgument,
      NativeArgument,
      NativeArgument,
      NativeArgument,
    ];
    const limits = { sign: 'positive', mayBeDate: true } as const;
    const refused = [
      ...[mean, target, tolerance].flatMap(each => refusedNumber(each, limits)),
      ...refusedTolerance(target.text, tolerance.text),
    ];
    const off = `ABS(${mean.text}-${target.text})`;
    const below = (limit: string) => `NORMDIST(${limit}-${off},0,${uncertainty.text}/2,TRUE())`;
    return [
      rowFormula(
        blankKey(mean),
        refused,
        `${below(tolerance.text)}-${below(`-${tolerance.text}`)}`,
        refusedNumber(uncertainty, limits),
      ),
    ];
  },
};

export const calibrationTurns: NativeFunction = {
  arguments: ['number', 'number'],
  width: 1,
  row(call) {
    const [deviation, perTurn] = [given(call, 0), given(call, 1)];
    const refused = [
      ...refusedNumber(deviation, { mayBeDate: true }),
      ...refusedNumber(perTurn, { sign: 'positive', mayBeDate: true }),
    ];
    return [rowFormula(blankKey(deviation), refused, `${deviation.text}/${perTurn.text}`)];
  },
};
