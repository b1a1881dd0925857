import type { Catalogue } from '../../core/catalogue/catalogue';
import { pressureAt } from '../../core/catalogue/pressureAt';
import { Decimal } from '../../core/units/decimal';
import { moneyText } from '../table/moneyText';
import type { Candidates, Choice } from './candidates';
import { converted, UNITS_OF, withUnit } from './dutyUnits';
import { hoseDutyOf } from './hoseMargins';
import type { Demand } from './readDuty';

/** How many hoses suit and how many are ruled out. */
export function foundText({ suitable, ruledOut }: Candidates): string {
  return suitable.length === 0
    ? `No hose of the catalogue suits; ${ruledOut.length} are ruled out. The reasons are below, the nearest first.`
    : `${suitable.length} of ${suitable.length + ruledOut.length} hoses suit, cheapest first.`;
}

/** Cost of one, with its parts, and of all; or why it is not known. */
export function costText({ cost, costReason }: Choice, { quantity }: Demand): string {
  if (!cost) return `Cost: not known${costReason ? `, ${costReason}` : ''}.`;
  const each = `Cost: ${moneyText(cost.total.toDecimalPlaces(2))} each (hose ${moneyText(cost.hose.toDecimalPlaces(2))}, fittings ${moneyText(cost.fittings.toDecimalPlaces(2))}, labour ${moneyText(cost.labour.toDecimalPlaces(2))})`;
  return quantity.eq(1) ? `${each}.` : `${each}; ${quantity} cost ${moneyText(cost.total.toDecimalPlaces(2).times(quantity))}.`;
}

/** Rating of the weakest part at the hottest temperature, and which part it is. */
export function weakestPart(catalogue: Catalogue, { hose, ends }: Choice, demand: Demand): string {
  const unit = UNITS_OF[demand.units].pressure;
  const parts = [
    { name: 'the hose', rating: pressureAt(catalogue, hose, hoseDutyOf(catalogue, demand).hottest) },
    ...ends.map(({ fitting }) => ({
      name: fitting.fitting,
      rating: fitting.workingPressure === undefined ? undefined : new Decimal(fitting.workingPressure),
    })),
  ];
  const unknown = parts.find(({ rating }) => rating === undefined);
  if (unknown) return `Working pressure: not known. The catalogue has none for ${unknown.name}.`;
  const weakest = parts.reduce((least, part) => (part.rating!.lt(least.rating!) ? part : least));
  return `Working pressure: ${withUnit(converted(weakest.rating!, catalogue.units.pressure, unit), unit)}; the weakest part is ${weakest.name}.`;
}
