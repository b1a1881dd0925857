import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { rateKey } from './duplicates';
import { problemSentence } from './problem';
import { remembered } from './remembered';

function look(catalogue: Catalogue, name: string): { readonly value: Decimal | undefined } {
  const entry = catalogue.index.rates.get(rateKey(name));
  if (entry?.problem) {
    throw new TradeError('notFound', 'rate', `${quotedText(name)} was left out of the catalogue`, problemSentence(entry.problem));
  }
  return { value: entry && new Decimal(entry.row!.value) };
}

const rates = remembered<ReturnType<typeof look>>();

/**
 * A rate by its name; case, blanks, hyphens and brackets are ignored.
 * @returns undefined where the table has no such rate
 * @throws TradeError `notFound` where its row was left out, naming the problem
 */
export function rateOf(catalogue: Catalogue, name: string): Decimal | undefined {
  return rates(catalogue, name, () => look(catalogue, name)).value;
}
