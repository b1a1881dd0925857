import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import type { Catalogue, Entry } from './catalogue';
import { partKey } from './partName';
import { problemSentence } from './problem';
import type { Fitting } from './tables/fittingsTable';
import type { Hose } from './tables/hosesTable';

function found<T>(entry: Entry<T> | undefined, kind: string, name: string): T {
  if (!entry) {
    throw new TradeError(
      'notFound',
      kind,
      `${quotedText(name)} is not in the catalogue`,
      'check its name, or add it to the tables',
    );
  }
  if (entry.problem) {
    throw new TradeError('notFound', kind, `${quotedText(name)} was left out of the catalogue`, problemSentence(entry.problem));
  }
  return entry.row as T;
}

/**
 * The hose of that name, without case and outer blanks.
 * @throws TradeError `notFound` where there is none, or where its row was left out (naming the problem)
 */
export function findHose(catalogue: Catalogue, name: string): Hose {
  return found(catalogue.index.hoses.get(partKey(name)), 'hose', name);
}

/** The fitting of that name; as findHose. */
export function findFitting(catalogue: Catalogue, name: string): Fitting {
  return found(catalogue.index.fittings.get(partKey(name)), 'fitting', name);
}
