import { TradeError } from '../tradeError';
import type { Catalogue } from './catalogue';
import { hoseFit, type HoseDuty, type HoseFit } from './hoseDuty';

/** Cheapest first; those without a price last, otherwise as they stand in the catalogue. */
const byPrice = (a: HoseFit, b: HoseFit) => (a.hose.pricePerLength ?? Infinity) - (b.hose.pricePerLength ?? Infinity) || 0;

/** `bore below 25 (3)`: how many hoses each demand leaves out, the one that leaves out fewest first. */
function countedDemands(fits: readonly HoseFit[]): string[] {
  const counts = new Map<string, number>();
  for (const { missed } of fits) for (const demand of new Set(missed)) counts.set(demand, (counts.get(demand) ?? 0) + 1);
  return [...counts].sort((a, b) => a[1] - b[1]).map(([demand, count]) => `${demand} (${count})`);
}

/** The hoses that miss fewest demands, and what they miss: what has to give way first. */
function nearest(fits: readonly HoseFit[]): string {
  const fewest = Math.min(...fits.map(({ missed }) => missed.length));
  const near = fits.filter(({ missed }) => missed.length === fewest);
  const groups = new Map<string, HoseFit[]>();
  for (const fit of near) {
    const key = fit.missed.join(' and ');
    groups.set(key, [...(groups.get(key) ?? []), fit]);
  }
  const [[missed, hoses]] = [...groups].sort((a, b) => b[1].length - a[1].length) as [[string, HoseFit[]]];
  return `${hoses[0]!.hose.hose}${hoses.length > 1 ? ` and ${hoses.length - 1} more` : ''} would suit but for: ${missed}`;
}

/**
 * Hoses that suit a duty, cheapest first. A hose whose data do not say that it suits is not among them.
 * @throws TradeError `notFound` where none suits, with what keeps the nearest from it and how many hoses each demand leaves out; `range`
 * where hottest is below coldest
 */
export function findHoses(catalogue: Catalogue, duty: HoseDuty): readonly HoseFit[] {
  if (duty.hottest.lt(duty.coldest)) {
    throw new TradeError('range', 'hottest', `is ${duty.hottest}, below the coldest, ${duty.coldest}`, 'exchange them');
  }
  const fits = catalogue.hoses.map(hose => hoseFit(catalogue, hose, duty));
  const suitable = fits.filter(fit => fit.missed.length === 0);
  if (suitable.length > 0) return suitable.sort(byPrice);
  const advice =
    fits.length === 0
      ? 'the catalogue has no hoses'
      : `${nearest(fits)}; of ${fits.length} hoses left out by: ${countedDemands(fits).join(', ')}`;
  throw new TradeError('notFound', '', 'no hose of the catalogue suits', advice);
}
