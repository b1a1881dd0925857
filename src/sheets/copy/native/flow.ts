import { blankKey, refusedNumber, rowFormula } from './conditions';
import { given, refuseMarks, type NativeArgument, type NativeFunction } from './nativeFunction';
import { stays, wordOf } from './words';

/** Cubic metres a second, metres and metres a second in one unit of the call. Exact: NIST Special Publication 811, Appendix B. */
const SI = {
  metric: { flow: '/60000', bore: '/1000', velocity: '' },
  US: { flow: '*0.003785411784/60', bore: '*0.0254', velocity: '*0.3048' },
} as const;

type Units = keyof typeof SI;
const unitOf = (word: NativeArgument): Units => wordOf(word, ['metric', 'US'] as const);

export const velocity: NativeFunction = {
  arguments: ['plainNumber', 'number', 'word'],
  width: 1,
  row(call) {
    const [flow, bore, word] = [given(call, 0), given(call, 1), given(call, 2)];
    const units = unitOf(word);
    if (units === 'metric') refuseMarks(call);
    const refused = [
      ...refusedNumber(flow, { sign: 'notNegative' }),
      ...refusedNumber(bore, { sign: 'positive', mayBeDate: true }),
    ];
    const speed = `${flow.text}${SI[units].flow}*4/PI()/(${bore.text}${SI[units].bore})^2`;
    return [rowFormula(blankKey(flow), refused, units === 'US' ? `${speed}/0.3048` : speed, stays(word, units))];
  },
};

export const boreSize: NativeFunction = {
  arguments: ['plainNumber', 'plainNumber', 'word'],
  width: 1,
  row(call) {
    const [flow, speed, word] = [given(call, 0), given(call, 1), given(call, 2)];
    const units = unitOf(word);
    const refused = [...refusedNumber(flow, { sign: 'positive' }), ...refusedNumber(speed, { sign: 'positive' })];
    const bore = `SQRT(${flow.text}${SI[units].flow}*4/PI()/(${speed.text}${SI[units].velocity}))`;
    return [rowFormula(blankKey(flow), refused, units === 'US' ? `${bore}/0.0254` : `${bore}*1000`, stays(word, units))];
  },
};
