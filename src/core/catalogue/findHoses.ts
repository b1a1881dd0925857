import { TradeError } from '../tradeError';
import type { Catalogue } from './catalogue';
import { hoseFit, type HoseDuty, type HoseFit } from './hoseDuty';

/** Cheapest first; those without a price last, otherwise as they stand in the catalogue. */
const byPrice = (a: HoseFit, b: HoseFit) => (a.hose.pricePerLength ?? Infinity) - (b.hose.pricePerLength ?? Infinity) || 0;

/**
 * Hoses that suit a duty, cheapest first. A hose whose data do not say that it suits is not among them.
 * @throws TradeError `notFound` where none suits, with how many hoses each demand rules out; `range` where hottest is below coldest
 */
export function findHoses(catalogue: Catalogue, duty: HoseDuty): readonly HoseFit[] {
  if (duty.hottest.lt(duty.coldest)) {
    throw new TradeError('range', 'hottest', `is ${duty.hottest}, below the coldest, ${duty.coldest}`, 'exchange them');
  }
  const fits = catalogue.hoses.map(hose => hoseFit(catalogue, hose, duty));
  const suitable = fits.filter(fit => fit.ruledOut.length === 0);
  if (suitable.length > 0) return suitable.sort(byPrice);
  const counts = new Map<string, number>();
  for (const { ruledOut } of fits) {
    for (const reason of ruledOut) {
      const demand = reason.replace(/ -?[\d.e+]+(?= |$)/, ' too low or too high');
      counts.set(demand, (counts.get(demand) ?? 0) + 1);
    }
  }
  const reasons = [...counts].sort((a, b) => b[1] - a[1]).map(([reason, count]) => `${reason} (${count})`);
  const advice = fits.length === 0 ? 'the catalogue has no hoses' : `of ${fits.length}, ruled out by: ${reasons.join(', ')}`;
  throw new TradeError('notFound', '', 'no hose of the catalogue suits', advice);
}
