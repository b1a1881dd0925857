import { NEEDED_RATES } from '../../../core/catalogue/rateNames';
import { mustStayBlank } from './assembly';
import { anyOf, refusedNumber, rowFormula } from './conditions';
import { CoupledExpressions } from './coupledHose';
import { given, type NativeFunction } from './nativeFunction';
import { NotNative } from '../notNative';

const NEEDED = 'a price or rate is missing';

function labour({ parts }: CoupledExpressions, quantity: string): string {
  const [setUp, cut, crimp, hour] = NEEDED_RATES.map(name => {
    const rate = parts.rate(name);
    if (!rate) throw new NotNative(`the rate ${name} is missing`);
    return rate;
  });
  const test = parts.rate('minutes per test');
  return `(${setUp}/${quantity}+${cut}+2*${crimp}${test ? `+${test}` : ''})*${hour}/60`;
}

/** Prices of fittings and ferrules. */
function fittingsCost(coupled: CoupledExpressions): { readonly prices: readonly string[]; readonly sum: string } {
  const prices = coupled.ofFittings('price');
  if (prices.includes(undefined)) throw new NotNative(NEEDED);
  const ferrules = coupled.ends.flatMap(end => coupled.ofFerrule(end, 'price') ?? []);
  return { prices: prices as readonly string[], sum: [...prices, ...ferrules].join('+') };
}

export const unitCost: NativeFunction = {
  arguments: ['catalogue', 'name', 'name', 'name', 'number', 'plainNumber', 'name'],
  width: 4,
  row(call, context) {
    const coupled = new CoupledExpressions(call, context);
    const quantity = given(call, 5);
    const [price, ratio] = [coupled.ofHose('pricePerLength'), coupled.ratio('perLength')];
    if (!price || !ratio) throw new NotNative(NEEDED);
    const scrap = coupled.parts.rate('scrap fraction');
    const { prices, sum } = fittingsCost(coupled);
    const { families, sizes, crimps } = coupled.faults();
    const refused = [
      ...coupled.refused(),
      ...refusedNumber(quantity, { sign: 'positive' }),
      `${quantity.text}<>INT(${quantity.text})`,
      ...mustStayBlank(call[6], 'a guard'),
      families,
      sizes,
      crimps,
      `${coupled.cut}<=0`,
      coupled.tooShort(coupled.cut),
      anyOf([price, ...prices].map(each => `${each}=""`)),
    ];
    const hose = `${coupled.cut}*${price}/(${ratio}${scrap ? `*(1-${scrap})` : ''})`;
    const work = labour(coupled, quantity.text);
    // What fails in one of the parts fails the whole row, as in UNITCOST.
    const whole = (result: string) => rowFormula(coupled.isBlank, refused, result);
    const [hoseCell, fittingsCell, labourCell] = [0, 1, 2].map(column => context.cell?.(column));
    const first = whole(`IF(ISERROR(${sum}),NA(),${hose})`);
    if (!hoseCell || !fittingsCell || !labourCell) {
      const all = [sum, work, `${hose}+${sum}+${work}`];
      return [first, ...all.map(result => whole(`IF(ISERROR(${sum}),NA(),${result})`))];
    }
    const beside = (result: string) => `IF(ISERROR(${hoseCell}),NA(),IF(${hoseCell}="","",${result}))`;
    return [first, beside(sum), beside(work), beside(`SUM(${hoseCell},${fittingsCell},${labourCell})`)];
  },
};
