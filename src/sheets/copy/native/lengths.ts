import { blankKey, ifThere, orZero, refusedNumber, refusedOptional, rounded, rowFormula } from './conditions';
import { given, type NativeArguments, type NativeFunction } from './nativeFunction';
import { NotNative } from '../notNative';

/** A length from another, both cut-offs and the allowance. */
function coupled(sign: '+' | '-'): NativeFunction['row'] {
  const back = sign === '-' ? '+' : '-';
  return call => {
    const [length, a, b, extra] = [given(call, 0), given(call, 1), given(call, 2), call[3]];
    const refused = [
      ...refusedNumber(length, { sign: 'positive' }),
      ...[a, b].flatMap(cutOff => refusedNumber(cutOff, { mayBeDate: true })),
      ...refusedOptional(extra, { mayBeDate: true }),
    ];
    const allowance = extra ? `${back}${orZero(extra)}` : '';
    const result = rounded(`${length.text}${sign}${a.text}${sign}${b.text}${allowance}`);
    return [rowFormula(blankKey(length), refused, `IF(${result}<=0,NA(),${result})`)];
  };
}

export const cutLength: NativeFunction = { arguments: ['number', 'number', 'number', 'number'], width: 1, row: coupled('-') };
export const overallLength: NativeFunction = { arguments: ['number', 'number', 'number', 'number'], width: 1, row: coupled('+') };

/** Shares below 1; a hose shortens by 4 % and lengthens by 2 % where nothing is said. */
function changeRow(call: NativeArguments): string[] {
  const length = given(call, 0);
  const share = (index: number) => {
    const argument = call[index];
    if (argument?.isConstant && typeof argument.value === 'number' && argument.value >= 1)
      throw new NotNative('a share is 1 or more');
    const below = argument && !argument.isConstant ? [`IF(${argument.text}="",FALSE(),${argument.text}>=1)`] : [];
    return [...refusedOptional(argument, { sign: 'notNegative' }), ...below];
  };
  const refused = refusedNumber(length, { sign: 'positive' });
  const ofCall = [...share(1), ...share(2)];
  const shorter = ifThere(call[1], call[1]?.text ?? '', '0.04');
  const longer = ifThere(call[2], call[2]?.text ?? '', '0.02');
  return [`${length.text}*(1-${shorter})`, `${length.text}*(1+${longer})`].map(result =>
    rowFormula(blankKey(length), refused, rounded(result), ofCall),
  );
}

export const lengthChange: NativeFunction = { arguments: ['number', 'plainNumber', 'plainNumber'], width: 2, row: changeRow };

function routeRow(call: NativeArguments): string[] {
  const [straights, radii, angles, outside] = [given(call, 0), given(call, 1), given(call, 2), call[3]];
  if (angles.count !== radii.count && radii.count !== 1) throw new NotNative('bend radii and angles are not paired');
  const isNumber = (value: unknown) => typeof value === 'number';
  if (![...radii.values, ...angles.values].every(isNumber)) throw new NotNative('a bend is not filled in');
  const lists = [straights, radii, angles];
  const refused = [
    ...[radii, angles].filter(({ isConstant }) => !isConstant).map(({ text, count }) => `COUNT(${text})<${count}`),
    `COUNT(${straights.text})=0`,
    ...(straights.isConstant ? [] : [`COUNT(${straights.text})+COUNTBLANK(${straights.text})<${straights.count}`]),
    ...lists.flatMap(({ text }) => [`MIN(${text})<0`, `MAX(${text})>1000000000`]),
    // A bend has a radius unless its angle is 0.
    radii.count === 1 ? `AND(${radii.text}=0,SUM(${angles.text})>0)` : `SUMPRODUCT((${radii.text}=0)*(${angles.text}>0))>0`,
    ...refusedOptional(outside, { sign: 'positive', mayBeDate: true }),
  ];
  const half = outside ? `+${orZero(outside)}/2` : '';
  const arcs =
    radii.count === 1
      ? `(${radii.text}${half})*SUM(${angles.text})`
      : `(SUMPRODUCT(${radii.text},${angles.text})${half}*SUM(${angles.text}))`;
  return [rowFormula('', refused, rounded(`SUM(${straights.text})+${arcs}*PI()/180`))];
}

export const routeLength: NativeFunction = { arguments: ['list', 'list', 'list', 'number'], width: 1, row: routeRow };
