import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import type { Catalogue } from './catalogue';
import { headingKey, partKey } from './partName';
import { problemSentence } from './problem';
import type { Guard } from './tables/guardsTable';
import type { Hose } from './tables/hosesTable';

/**
 * The guard of that name for a hose: the only row of that name, else the one whose Size is the hose's.
 * @throws TradeError `notFound` where there is none, where its size does not say which, or where its row was left out
 */
export function findGuard(catalogue: Catalogue, name: string, hose: Hose): Guard {
  const rows = catalogue.index.guards.get(partKey(name)) ?? [];
  if (rows.length === 0) {
    const advice = 'check its name, or add it to the table Guards';
    throw new TradeError('notFound', 'guard', `${quotedText(name)} is not in the catalogue`, advice);
  }
  const size = headingKey(hose.size ?? '');
  const found =
    rows.length === 1
      ? rows[0]
      : (rows.find(row => row.size !== '' && row.size === size) ?? rows.find(row => row.size === '' && row.entry.problem));
  if (!found) {
    const received = `${quotedText(name)} has no size ${hose.size ?? '(blank)'}, that of ${hose.hose}`;
    throw new TradeError('notFound', 'guard', received, 'add that size to the table Guards, or choose another guard');
  }
  if (found.entry.problem) {
    const sentence = problemSentence(found.entry.problem);
    throw new TradeError('notFound', 'guard', `${quotedText(name)} was left out of the catalogue`, sentence);
  }
  return found.entry.row!;
}
