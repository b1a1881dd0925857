import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { tooShort } from './assembly';
import { coupledHose, type CoupledHose } from './coupledHose';
import { findGuard } from './findGuard';
import { lengthRatio } from './lengthPer';
import { NEEDED_RATES, type ZERO_RATES } from './rateNames';
import { rateOf } from './rateOf';
import { remembered } from './remembered';

/** Cost of one assembly, in the currency of the catalogue. */
export interface UnitCost {
  /** With its guard. */
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

function requireRate(catalogue: Catalogue, name: (typeof NEEDED_RATES)[number]): Decimal {
  const rate = rateOf(catalogue, name);
  if (rate) return rate;
  throw new TradeError('notFound', 'rate', `${quotedText(name)} is missing`, 'add it to the table Rates (0 where there is none)');
}

const rateOrZero = (catalogue: Catalogue, name: (typeof ZERO_RATES)[number]): Decimal =>
  rateOf(catalogue, name) ?? new Decimal(0);

/** (set-up minutes ÷ quantity + minutes per cut + minutes per crimp × couplings + minutes per test) × labour per hour ÷ 60 */
function labourCost(catalogue: Catalogue, quantity: Decimal): Decimal {
  const rate = (name: (typeof NEEDED_RATES)[number]) => requireRate(catalogue, name);
  const minutes = rate('set-up minutes')
    .div(quantity)
    .plus(rate('minutes per cut'))
    .plus(rate('minutes per crimp').times(COUPLINGS))
    .plus(rateOrZero(catalogue, 'minutes per test'));
  return minutes.times(rate('labour per hour')).div(MINUTES_PER_HOUR);
}

/** What the parts cost: a length of hose costs length × price ÷ divisor. */
interface PartsCost {
  readonly price: Decimal;
  readonly divisor: Decimal;
  readonly fittings: Decimal;
}

function partsCost(catalogue: Catalogue, { hose, ends }: CoupledHose, guardName: string | undefined): PartsCost {
  const guard = guardName === undefined ? undefined : findGuard(catalogue, guardName, hose);
  const ownPrice = requirePrice(hose.pricePerLength, hose.hose);
  const price = guard ? ownPrice.plus(requirePrice(guard.pricePerLength, guard.guard)) : ownPrice;
  const scrap = rateOrZero(catalogue, 'scrap fraction');
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

/** What must not be made has no cost. */
function requireMakeable(catalogue: Catalogue, parts: CoupledHose, cut: Decimal): void {
  const wrong = [...parts.forbidden, ...tooShort(catalogue, cut, parts)];
  if (wrong.length > 0) throw new TradeError('notApproved', '', '', wrong.join('; '));
}

/**
 * Cost of one assembly out of a batch.
 * Hose: cut length × (price + guard's price) ÷ (1 − scrap fraction); scrap and minutes per test are 0 where the rates name none. Not rounded.
 * @param overall overall length, in the unit of Fittings' Cut-off
 * @param quantity assemblies in the batch, over which the set-up is spread
 * @param guard guard over the hose; undefined = none
 * @throws TradeError `notFound` for an unknown part, a missing price or a missing rate; `notApproved` with ASSEMBLY's sentence for what must
 * not be made (families, sizes, crimp data, too short)
 */
export function unitCost(
  catalogue: Catalogue,
  hoseName: string,
  fittingNames: readonly [string, string],
  overall: Decimal,
  quantity: Decimal,
  guard?: string,
): UnitCost {
  const parts = coupledHose(catalogue, hoseName, fittingNames);
  const cut = overall.minus(parts.cutOffs);
  requireMakeable(catalogue, parts, cut);
  const { price, divisor, fittings } = partsCosts(catalogue, [hoseName, ...fittingNames, guard ?? ''].join('\u001f'), () =>
    partsCost(catalogue, parts, guard),
  );
  const labour = labours(catalogue, quantity.toString(), () => labourCost(catalogue, quantity));
  const hose = cut.times(price).div(divisor);
  return { hose, fittings, labour, total: hose.plus(fittings).plus(labour) };
}
