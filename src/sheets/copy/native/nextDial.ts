import { anyOf, refusedNumber, refusedOptional, rounded } from './conditions';
import { crimpFormula, nativeCrimp } from './crimpReadings';
import { given, type NativeArgument, type NativeFunction } from './nativeFunction';

/** A condition on a setting that may be left out. */
function limit(argument: NativeArgument | undefined, condition: (x: string) => string): string[] {
  if (!argument) return [];
  const { text, isConstant } = argument;
  return [isConstant ? condition(text) : `IF(${text}="",FALSE(),${condition(text)})`];
}

export const nextDial: NativeFunction = {
  arguments: ['plainNumber', 'readings', 'number', 'number', 'number', 'plainNumber', 'plainNumber', 'plainNumber'],
  width: 1,
  row(call) {
    const dial = given(call, 0);
    const crimp = nativeCrimp(call, 1);
    const step = given(call, 4);
    const [lowest, highest, largestMove] = [call[5], call[6], call[7]];
    const refused = [...refusedNumber(dial), ...refusedNumber(step, { sign: 'notZero', mayBeDate: true })];
    const ofCall = [
      ...refusedOptional(lowest),
      ...refusedOptional(highest),
      ...refusedOptional(largestMove, { sign: 'positive' }),
      ...(highest ? limit(lowest, low => limit(highest, high => `${low}>${high}`)[0]!) : []),
    ];
    const { deviationSum, readings, beyond } = crimp;
    // To the nearest digit, on a tie the smaller move. ROUNDUP of a number that is not negative is the same in all programs; INT is not.
    const off = rounded(`ABS(${deviationSum})/(${readings.count}*ABS(${step.text}))`);
    const digits = `ROUNDUP(MAX(0,${rounded(`${off}-0.5`)}),0)`;
    const next = `${dial.text}+SIGN(${deviationSum})*SIGN(${step.text})*${digits}`;
    const look = anyOf([
      `${digits}=0`,
      ...limit(largestMove, most => `${digits}>${most}`),
      ...limit(lowest, low => `${next}<${low}`),
      ...limit(highest, high => `${next}>${high}`),
    ]);
    return [crimpFormula(crimp, `IF(${beyond}<=0,${dial.text},IF(${look},NA(),${next}))`, ofCall, refused)];
  },
};
