import { cutLength } from '../length/cutLength';
import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { crimpOrReason, type CrimpMatch } from './crimpFor';
import { findFitting, findHose } from './findPart';
import { lengthIn } from './lengthIn';
import { partKey } from './partName';
import { familiesMatch, sizesMatch } from './partsMatch';
import { rateOf } from './rateOf';
import type { Fitting } from './tables/fittingsTable';
import type { Hose } from './tables/hosesTable';

/** A hose with two fittings. Lengths, pressure and mass are in the catalogue's units. */
export interface Assembly {
  readonly cutLength: Decimal;
  /** Of the weakest part; undefined where a part's rating is missing. */
  readonly workingPressure: number | undefined;
  /** Hose, fittings, and the ferrules that the crimp rows name; undefined where a part's mass is missing. */
  readonly mass: Decimal | undefined;
  /** What is wrong with it; none where it may be made. */
  readonly wrong: readonly string[];
}

/** Each once, in order: the two ends are often alike. */
const once = (items: readonly string[]) => [...new Set(items)];

/** The ferrule that a crimp row names, where it is a part of the catalogue. */
export function ferruleOf(catalogue: Catalogue, match: CrimpMatch | string): Fitting | undefined {
  if (typeof match === 'string' || match.crimp.ferrule === undefined) return undefined;
  return catalogue.index.fittings.get(partKey(match.crimp.ferrule))?.row;
}

function massOf(catalogue: Catalogue, hose: Hose, parts: readonly Fitting[], cut: Decimal): Decimal | undefined {
  const perLength = catalogue.units.massPerLength;
  if (!perLength || hose.massPerLength === undefined) return undefined;
  let mass = lengthIn(catalogue.units.length, cut, perLength).times(hose.massPerLength);
  for (const part of parts) {
    if (part.mass === undefined) return undefined;
    mass = mass.plus(part.mass);
  }
  return mass;
}

function pairProblems(hose: Hose, fitting: Fitting, match: CrimpMatch | string): string[] {
  const wrong: string[] = [];
  if (!familiesMatch(hose, fitting))
    wrong.push(`families differ: ${hose.hose} (${hose.family}), ${fitting.fitting} (${fitting.family})`);
  if (!sizesMatch(hose, fitting)) {
    wrong.push(`sizes differ: ${hose.hose} (${hose.size ?? hose.bore}), ${fitting.fitting} (${fitting.size ?? fitting.bore})`);
  }
  if (typeof match === 'string') wrong.push(match);
  if (fitting.workingPressure === undefined) wrong.push(`rating missing: ${fitting.fitting}`);
  return wrong;
}

/** Free hose between the couplings against the shop's shortest, where the rates name one. */
function lengthProblems(catalogue: Catalogue, cut: Decimal, ends: readonly End[]): string[] {
  const shortest = rateOf(catalogue, 'shortest free hose');
  if (!shortest) return [];
  let free = cut;
  const unknown: string[] = [];
  for (const { fitting, match } of ends) {
    const depth = (typeof match === 'string' ? undefined : match.crimp.insertionDepth) ?? fitting.insertionDepth;
    if (depth === undefined) unknown.push(`insertion depth missing: ${fitting.fitting}`);
    else free = free.minus(depth);
  }
  const unit = catalogue.units.length.symbol;
  return free.lt(shortest) ? [`too short: ${free} ${unit} of free hose, at least ${shortest} ${unit}`] : unknown;
}

interface End {
  readonly fitting: Fitting;
  readonly match: CrimpMatch | string;
}

/**
 * Cut length, rating and mass of a hose with two fittings, and what is wrong with it.
 * @param overall overall length, in the unit of Fittings' Cut-off
 * @throws TradeError `notFound` for an unknown part; `impossible` where the cut-offs leave no hose
 */
export function assembly(catalogue: Catalogue, hoseName: string, fittingA: string, fittingB: string, overall: Decimal): Assembly {
  const hose = findHose(catalogue, hoseName);
  const ends: End[] = [fittingA, fittingB].map(name => ({
    fitting: findFitting(catalogue, name),
    match: crimpOrReason(catalogue, hoseName, name),
  }));
  const [a, b] = ends as [End, End];
  const cut = cutLength({ overall, cutOffA: new Decimal(a.fitting.cutOff), cutOffB: new Decimal(b.fitting.cutOff) });
  const ratings = [hose.workingPressure, a.fitting.workingPressure, b.fitting.workingPressure];
  const parts = ends.flatMap(({ fitting, match }) => [fitting, ferruleOf(catalogue, match) ?? []].flat());
  return {
    cutLength: cut,
    workingPressure: ratings.includes(undefined) ? undefined : Math.min(...(ratings as number[])),
    mass: massOf(catalogue, hose, parts, cut),
    wrong: once([
      ...ends.flatMap(({ fitting, match }) => pairProblems(hose, fitting, match)),
      ...lengthProblems(catalogue, cut, ends),
    ]),
  };
}
