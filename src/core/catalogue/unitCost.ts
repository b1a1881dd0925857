import { cutFrom } from '../length/cutLength';
import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { coupledHose, type CoupledHose } from './coupledHose';
import { lengthRatio } from './lengthIn';
import { rateOf } from './rateOf';
import { remembered } from './remembered';

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

/** Rates without which no cost of labour is known. */
export const NEEDED_RATES = ['set-up minutes', 'minutes per cut', 'minutes per crimp', 'labour per hour'] as const;

function requireRate(catalogue: Catalogue, name: (typeof NEEDED_RATES)[number]): Decimal {
  const rate = rateOf(catalogue, name);
  if (rate) return rate;
  throw new TradeError('notFound', 'rate', `"${name}" is missing`, 'add it to the table Rates (0 where there is none)');
}

/** (set-up minutes ÷ quantity + minutes per cut + minutes per crimp × couplings) × labour per hour ÷ 60 */
function labourCost(catalogue: Catalogue, quantity: Decimal): Decimal {
  const rate = (name: (typeof NEEDED_RATES)[number]) => requireRate(catalogue, name);
  const minutes = rate('set-up minutes')
    .div(quantity)
    .plus(rate('minutes per cut'))
    .plus(rate('minutes per crimp').times(COUPLINGS));
  return minutes.times(rate('labour per hour')).div(MINUTES_PER_HOUR);
}

/** What the parts cost: a length of hose costs length × price ÷ divisor. */
interface PartsCost {
  readonly price: Decimal;
  readonly divisor: Decimal;
  readonly fittings: Decimal;
}

function partsCost(catalogue: Catalogue, { hose, ends }: CoupledHose): PartsCost {
  const price = requirePrice(hose.pricePerLength, hose.hose);
  const scrap = rateOf(catalogue, 'scrap fraction') ?? new Decimal(0);
  const { length, perLength } = catalogue.units;
  let fittings = new Decimal(0);
  for (const { fitting, ferrule } of ends) {
    fittings = fittings.plus(requirePrice(fitting.price, fitting.fitting));
    if (ferrule) fittings = fittings.plus(requirePrice(ferrule.price, ferrule.fitting));
  }
  return { price, divisor: lengthRatio(length, perLength!).times(new Decimal(1).minus(scrap)), fittings };
}

const labours = remembered<Decimal>();
const partsCosts = remembered<PartsCost>();

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
  const parts = coupledHose(catalogue, hoseName, fittingNames);
  const { price, divisor, fittings } = partsCosts(catalogue, [hoseName, ...fittingNames].join('\u001f'), () =>
    partsCost(catalogue, parts),
  );
  const labour = labours(catalogue, quantity.toString(), () => labourCost(catalogue, quantity));
  const hose = cutFrom(overall, parts.cutOffs).times(price).div(divisor);
  return { hose, fittings, labour, total: hose.plus(fittings).plus(labour) };
}
