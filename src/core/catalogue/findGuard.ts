import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import type { Catalogue, GuardEntry } from './catalogue';
import { headingKey, partKey } from './partName';
import { sizesMatch } from './partsMatch';
import { problemSentence } from './problem';
import { remembered } from './remembered';
import type { Guard } from './tables/guardsTable';
import type { Hose } from './tables/hosesTable';

/** Two names of one bore each (ISO 4397 and older series). */
const ONE_BORE: Readonly<Record<string, string>> = { dn20: 'dn19', dn32: 'dn31' };
const sizeKey = (key: string) => ONE_BORE[key] ?? key;

const boresOfSize = remembered<readonly number[]>();

/** Whether a size means the hose's bore: the bores of the catalogue's own hoses and fittings of that size say so, and all of them agree. */
function isOfBore(catalogue: Catalogue, size: string, hose: Hose): boolean {
  const key = sizeKey(size);
  const bores = boresOfSize(catalogue, key, () =>
    [...catalogue.hoses, ...catalogue.fittings].flatMap(part => (sizeKey(headingKey(part.size ?? '')) === key ? part.bore : [])),
  );
  return bores.length > 0 && bores.every(bore => sizesMatch(hose, { bore }));
}

/** The row with the smallest inside diameter that goes over the hose; undefined where the rows do not say, or two are alike. */
function closest(rows: readonly GuardEntry[], { outsideDiameter }: Hose): GuardEntry | undefined {
  const inside = ({ entry }: GuardEntry) => entry.row?.insideDiameter ?? NaN;
  if (outsideDiameter === undefined || rows.some(row => !inside(row))) return undefined;
  const [first, second] = rows.filter(row => inside(row) >= outsideDiameter).sort((a, b) => inside(a) - inside(b));
  return first && second && inside(first) === inside(second) ? undefined : first;
}

/** Of several rows of one name: that of the hose's bore by its size, else by the inside diameters of those without a size. */
function ofHose(catalogue: Catalogue, rows: readonly GuardEntry[], hose: Hose): GuardEntry | undefined {
  const sized = rows.filter(({ size }) => size !== '' && isOfBore(catalogue, size, hose));
  if (sized.length === 1) return sized[0];
  const open = sized.length > 0 ? sized : rows.filter(({ size }) => size === '');
  return open.find(({ entry }) => entry.problem) ?? closest(open, hose);
}

/**
 * The guard of that name for a hose: the only row of that name, else the one of the hose's bore. The text in Size stands for the bore of the
 * catalogue's parts of that size; rows without a size go by their inside diameter.
 * @throws TradeError `notFound` where there is none, where the table does not say which, or where its row was left out
 */
export function findGuard(catalogue: Catalogue, name: string, hose: Hose): Guard {
  const rows = catalogue.index.guards.get(partKey(name)) ?? [];
  if (rows.length === 0) {
    const advice = 'check its name, or add it to the table Guards';
    throw new TradeError('notFound', 'guard', `${quotedText(name)} is not in the catalogue`, advice);
  }
  const found = rows.length === 1 ? rows[0] : ofHose(catalogue, rows, hose);
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
