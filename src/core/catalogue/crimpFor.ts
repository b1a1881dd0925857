import { shownText } from '../quotedText';
import { TradeError } from '../tradeError';
import type { Catalogue, CrimpEntry } from './catalogue';
import { partKey } from './partName';
import { familiesMatch, isFerrule, sizesMatch } from './partsMatch';
import { problemSentence } from './problem';
import { remembered } from './remembered';
import type { Crimp } from './tables/crimpsTable';
import type { Fitting } from './tables/fittingsTable';
import type { Hose } from './tables/hosesTable';

/** The crimp row that counts for a hose and a fitting. */
export interface CrimpMatch {
  readonly crimp: Crimp;
  /** The part or the pattern that stands in the row: `Alder DN 25 straight`, `Alder DN 25*`. */
  readonly matched: string;
  readonly isPattern: boolean;
}

function unsafe(hose: string, fitting: string, because: string): TradeError {
  const pair = `no crimp data for ${shownText(hose)} with ${shownText(fitting)}`;
  return new TradeError('notApproved', '', pair, because ? `do not assemble (${because})` : 'do not assemble');
}

/** Why there can be no data: a part that was left out or, unless a row names it, one that is unknown. */
function partReason(catalogue: Catalogue, hose: string, fitting: string, isNamed: boolean): string {
  const hoseEntry = catalogue.index.hoses.get(partKey(hose));
  const fittingEntry = catalogue.index.fittings.get(partKey(fitting));
  for (const [entry, kind, name] of [
    [hoseEntry, 'hose', hose],
    [fittingEntry, 'fitting', fitting],
  ] as const) {
    if (!entry && !isNamed) return `${kind} ${shownText(name)} is not in the catalogue`;
    if (entry?.problem) return problemSentence(entry.problem);
  }
  return '';
}

const ownFamily = remembered<boolean>();

/**
 * True where a pattern stands for a fitting whose name begins like it: one of the hose's size, and of its family unless the pattern names
 * other families only. `Alder*` gives no set-up for a fitting that does not go into this hose, and none for a ferrule alone.
 * @param start what stands before the pattern's `*`, as a key (see partKey)
 */
export function patternReaches(catalogue: Catalogue, start: string, hose: Hose, fitting: Fitting): boolean {
  const isNamed = (part: Fitting) => partKey(part.fitting).startsWith(start);
  if (!isNamed(fitting) || isFerrule(fitting) || !sizesMatch(hose, fitting)) return false;
  if (familiesMatch(hose, fitting)) return true;
  const key = `${hose.hose}\u001f${start}`;
  return !ownFamily(catalogue, key, () => catalogue.fittings.some(part => isNamed(part) && familiesMatch(hose, part)));
}

/** The pattern's row that counts: the longest pattern first. */
function byPattern(catalogue: Catalogue, hose: string, fitting: string): CrimpEntry | undefined {
  const wanted = partKey(fitting);
  const found = catalogue.index.crimps.get(hose)?.patterns.find(({ start }) => wanted.startsWith(start));
  if (!found) return undefined;
  const hoseRow = catalogue.index.hoses.get(hose)?.row;
  const fittingRow = catalogue.index.fittings.get(wanted)?.row;
  return hoseRow && fittingRow && patternReaches(catalogue, found.start, hoseRow, fittingRow) ? found : undefined;
}

function look(catalogue: Catalogue, hose: string, fitting: string): CrimpMatch {
  const hoseKey = partKey(hose);
  const exact = catalogue.index.crimps.get(hoseKey)?.exact.get(partKey(fitting));
  const because = partReason(catalogue, hose, fitting, exact !== undefined);
  if (because) throw unsafe(hose, fitting, because);
  const found = exact ?? byPattern(catalogue, hoseKey, fitting);
  if (!found) throw unsafe(hose, fitting, '');
  if (found.entry.problem) throw unsafe(hose, fitting, problemSentence(found.entry.problem));
  return { crimp: found.entry.row!, matched: found.fitting, isPattern: !exact };
}

const matches = remembered<CrimpMatch>();

/**
 * Crimp data of a hose with a fitting: an exact part wins over a pattern, the longer pattern over the shorter. A row that would win but
 * was left out for a problem is no reason to take a lesser one. Parts that an exact row names need not stand in the other tables.
 * @returns the row and what it matched
 * @throws TradeError `notApproved` "no crimp data for …: do not assemble"
 */
export function crimpFor(catalogue: Catalogue, hose: string, fitting: string): CrimpMatch {
  return matches(catalogue, `${hose}\u001f${fitting}`, () => look(catalogue, hose, fitting));
}

/**
 * The crimp row that a machine's record is about: that of its pair, or of its pattern where it names one.
 * @returns undefined where the catalogue has none
 */
export function crimpOfRecord(catalogue: Catalogue, hose: string, fitting: string): Crimp | undefined {
  if (fitting.trim().endsWith('*')) {
    const start = partKey(fitting).slice(0, -1);
    return catalogue.index.crimps.get(partKey(hose))?.patterns.find(pattern => pattern.start === start)?.entry.row;
  }
  const found = crimpOrReason(catalogue, hose, fitting);
  return typeof found === 'string' ? undefined : found.crimp;
}

/** As crimpFor, with the reason's sentence instead of an error. */
export function crimpOrReason(catalogue: Catalogue, hose: string, fitting: string): CrimpMatch | string {
  try {
    return crimpFor(catalogue, hose, fitting);
  } catch (error) {
    if (error instanceof TradeError) return error.message;
    throw error;
  }
}
