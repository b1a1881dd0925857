import { blankKey, ifThere, orZero, refusedNumber, refusedOptional, rounded, rowFormula } from './conditions';
import { given, type NativeFunction } from './nativeFunction';

export const sellPrice: NativeFunction = {
  arguments: ['plainNumber', 'plainNumber', 'plainNumber', 'plainNumber'],
  width: 1,
  row(call) {
    const [cost, margin, roundTo, minimum] = [given(call, 0), given(call, 1), call[2], call[3]];
    const refused = [...refusedNumber(cost, { sign: 'notNegative' }), ...refusedNumber(margin), `${margin.text}>=1`];
    const ofCall = [...refusedOptional(roundTo, { sign: 'positive' }), ...refusedOptional(minimum, { sign: 'notNegative' })];
    const price = `MAX(${cost.text}/(1-${margin.text}),${orZero(minimum)})`;
    const step = roundTo?.text ?? '';
    // A quotient without end must not lift the price by a whole step: rounded at 9 decimals, then up.
    const stepped = rounded(`ROUNDUP(${rounded(`${price}/${step}`)},0)*${step}`);
    return [rowFormula(blankKey(cost), refused, ifThere(roundTo, stepped, price), ofCall)];
  },
};
