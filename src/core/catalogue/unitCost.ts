import { cutLength } from '../length/cutLength';
import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import { ferruleOf } from './assembly';
import type { Catalogue } from './catalogue';
import { crimpOrReason } from './crimpFor';
import { findFitting, findHose } from './findPart';
import { lengthIn } from './lengthIn';
import { rateOf } from './rateOf';

/** Cost of one assembly, in the currency of the catalogue. */
export interface UnitCost {
  readonly hose: Decimal;
  /** Both fittings, and the ferrules that the crimp rows name where they are parts with a price. */
  readonly fittings: Decimal;
  readonly labour: Decimal;
  readonly total: Decimal;
}

const COUPLINGS = 2;
const MINUTES_PER_HOUR = 60;

function requirePrice(price: number | undefined, part: string): Decimal {
  if (price !== undefined) return new Decimal(price);
  throw new TradeError('notFound', 'price', `of ${part} is missing`, 'enter it in the catalogue');
}

function requireRate(catalogue: Catalogue, name: string): Decimal {
  const rate = rateOf(catalogue, name);
  if (rate) return rate;
  throw new TradeError('notFound', 'rate', `"${name}" is missing`, 'add it to the table Rates (0 where there is none)');
}

/** (set-up minutes ÷ quantity + minutes per cut + minutes per crimp × couplings) × labour per hour ÷ 60 */
function labourCost(catalogue: Catalogue, quantity: Decimal): Decimal {
  const rate = (name: string) => requireRate(catalogue, name);
  const minutes = rate('set-up minutes')
    .div(quantity)
    .plus(rate('minutes per cut'))
    .plus(rate('minutes per crimp').times(COUPLINGS));
  return minutes.times(rate('labour per hour')).div(MINUTES_PER_HOUR);
}

/**
 * Cost of one assembly out of a batch.
 * Hose: cut length × price ÷ (1 − scrap fraction); no scrap where the rates name none. Not rounded.
 * @param overall overall length, in the unit of Fittings' Cut-off
 * @param quantity assemblies in the batch, over which the set-up is spread
 * @throws TradeError `notFound` for an unknown part, a missing price or a missing rate
 */
export function unitCost(
  catalogue: Catalogue,
  hoseName: string,
  fittingNames: readonly [string, string],
  overall: Decimal,
  quantity: Decimal,
): UnitCost {
  const hose = findHose(catalogue, hoseName);
  const [a, b] = fittingNames.map(name => findFitting(catalogue, name)) as [
    ReturnType<typeof findFitting>,
    ReturnType<typeof findFitting>,
  ];
  const cut = cutLength({ overall, cutOffA: new Decimal(a.cutOff), cutOffB: new Decimal(b.cutOff) });
  const pricePerLength = requirePrice(hose.pricePerLength, hose.hose);
  const scrap = rateOf(catalogue, 'scrap fraction') ?? new Decimal(0);
  const hoseCost = lengthIn(catalogue.units.length, cut, catalogue.units.perLength!)
    .times(pricePerLength)
    .div(new Decimal(1).minus(scrap));
  let fittings = new Decimal(0);
  for (const fitting of [a, b]) {
    const ferrule = ferruleOf(catalogue, crimpOrReason(catalogue, hoseName, fitting.fitting));
    fittings = fittings.plus(requirePrice(fitting.price, fitting.fitting));
    if (ferrule) fittings = fittings.plus(requirePrice(ferrule.price, ferrule.fitting));
  }
  const labour = labourCost(catalogue, quantity);
  return { hose: hoseCost, fittings, labour, total: hoseCost.plus(fittings).plus(labour) };
}
