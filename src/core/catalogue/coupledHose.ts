import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { crimpOrReason, type CrimpMatch } from './crimpFor';
import { findFitting, findHose } from './findPart';
import { lengthPer } from './lengthPer';
import { headingKey, partKey } from './partName';
import { familiesMatch, sizesMatch } from './partsMatch';
import { rateOf } from './rateOf';
import { remembered } from './remembered';
import type { Fitting } from './tables/fittingsTable';
import type { Hose } from './tables/hosesTable';

/** One end of an assembly. */
export interface CoupledEnd {
  readonly fitting: Fitting;
  /** How deep the hose goes in: the crimp row's depth, else the fitting's; undefined where neither says. */
  readonly insertionDepth: number | undefined;
  /** The ferrule that the crimp row names, where it is a part of the catalogue. */
  readonly ferrule: Fitting | undefined;
}

/** A hose with two fittings: all that does not depend on its length. */
export interface CoupledHose {
  readonly hose: Hose;
  readonly ends: readonly [CoupledEnd, CoupledEnd];
  /** Both cut-offs. */
  readonly cutOffs: Decimal;
  /** Hose inside the couplings, as far as it is known. */
  readonly inserted: Decimal;
  /** Shortest cut that leaves the shop's shortest free hose; undefined where the rates name none. */
  readonly shortestCut: Decimal | undefined;
  /** The rates count the shortest free hose in outside diameters, and that of the hose is not known. */
  readonly outsideMissing: boolean;
  /** Fittings whose insertion depth neither their own row nor the crimp row states. */
  readonly depthMissing: readonly string[];
  /** Of the weakest part, not derated; undefined where a part's rating is missing. */
  readonly workingPressure: number | undefined;
  /** Of the weaker fitting; undefined where a rating is missing. */
  readonly fittingPressure: number | undefined;
  /** Mass of one unit of the catalogue's lengths of hose, and of fittings and ferrules; undefined where a mass is missing. */
  readonly mass: { readonly perLength: number; readonly parts: number } | undefined;
  /** Why the parts must not be put together (families, sizes, crimp data), the gravest first; none where they may. */
  readonly forbidden: readonly string[];
  /** Each fitting without a rating, as a sentence. */
  readonly ratingMissing: readonly string[];
}

/** Each once, in order: the two ends are often alike. */
const once = (items: readonly string[]) => [...new Set(items)];
const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum.plus(value), new Decimal(0));

function ferruleOf(catalogue: Catalogue, match: CrimpMatch | string): Fitting | undefined {
  const name = typeof match === 'string' ? undefined : match.crimp.ferrule;
  return name !== undefined && catalogue.index.fittings.has(partKey(name)) ? findFitting(catalogue, name) : undefined;
}

function massOf(catalogue: Catalogue, hose: Hose, parts: readonly Fitting[]): CoupledHose['mass'] {
  const { length, massPerLength } = catalogue.units;
  if (!massPerLength || hose.massPerLength === undefined) return undefined;
  const masses = parts.map(part => part.mass);
  if (masses.includes(undefined)) return undefined;
  const perLength = lengthPer(length, new Decimal(hose.massPerLength), massPerLength);
  return { perLength: perLength.toNumber(), parts: sumOf(masses as number[]).toNumber() };
}

/** The size of a part, with its bore where the size of the other one reads alike. */
function sizeText({ size, bore }: Pick<Hose, 'size' | 'bore'>, other: Pick<Hose, 'size'>): string {
  if (size === undefined) return `bore ${bore}`;
  return other.size !== undefined && headingKey(other.size) === headingKey(size) ? `${size}, bore ${bore}` : size;
}

interface Pair {
  readonly fitting: Fitting;
  readonly match: CrimpMatch | string;
}

/** What can be wrong with a hose and a fitting, the gravest first; undefined where it is not. */
const FAULTS: readonly ((hose: Hose, pair: Pair) => string | undefined)[] = [
  (hose, { fitting }) =>
    familiesMatch(hose, fitting)
      ? undefined
      : `families differ: ${hose.hose} (${hose.family}), ${fitting.fitting} (${fitting.family})`,
  (hose, { fitting }) =>
    sizesMatch(hose, fitting)
      ? undefined
      : `sizes differ: ${hose.hose} (${sizeText(hose, fitting)}), ${fitting.fitting} (${sizeText(fitting, hose)})`,
  (_, { match }) => (typeof match === 'string' ? match : undefined),
];

function endOf(catalogue: Catalogue, fitting: Fitting, match: CrimpMatch | string): CoupledEnd {
  const ofCrimp = typeof match === 'string' ? undefined : match.crimp.insertionDepth;
  return { fitting, insertionDepth: ofCrimp ?? fitting.insertionDepth, ferrule: ferruleOf(catalogue, match) };
}

/** The shop's shortest free hose: the longer of the two ways in which the rates may give it. */
function shortestFree(
  catalogue: Catalogue,
  { outsideDiameter }: Hose,
  inserted: Decimal,
): Pick<CoupledHose, 'shortestCut' | 'outsideMissing'> {
  const length = rateOf(catalogue, 'shortest free hose');
  const diameters = rateOf(catalogue, 'shortest free hose in diameters');
  const ofDiameter = outsideDiameter === undefined ? undefined : diameters?.times(outsideDiameter);
  const stated = [length, ofDiameter].filter(found => found !== undefined);
  return {
    shortestCut: stated.length > 0 ? Decimal.max(...stated).plus(inserted) : undefined,
    outsideMissing: diameters !== undefined && !diameters.isZero() && outsideDiameter === undefined,
  };
}

function couple(catalogue: Catalogue, hoseName: string, fittingNames: readonly [string, string]): CoupledHose {
  const hose = findHose(catalogue, hoseName);
  const pairs: Pair[] = fittingNames.map(name => {
    const fitting = findFitting(catalogue, name);
    return { fitting, match: crimpOrReason(catalogue, hoseName, name) };
  });
  const ends = pairs.map(({ fitting, match }) => endOf(catalogue, fitting, match)) as [CoupledEnd, CoupledEnd];
  const inserted = sumOf(ends.map(({ insertionDepth }) => insertionDepth ?? 0));
  const ratings = ends.map(({ fitting }) => fitting.workingPressure);
  const fittingPressure = ratings.includes(undefined) ? undefined : Math.min(...(ratings as number[]));
  return {
    hose,
    ends,
    cutOffs: sumOf(ends.map(({ fitting }) => fitting.cutOff)),
    inserted,
    ...shortestFree(catalogue, hose, inserted),
    depthMissing: once(ends.flatMap(end => (end.insertionDepth === undefined ? end.fitting.fitting : []))),
    workingPressure: fittingPressure === undefined ? undefined : Math.min(hose.workingPressure, fittingPressure),
    fittingPressure,
    mass: massOf(
      catalogue,
      hose,
      ends.flatMap(({ fitting, ferrule }) => (ferrule ? [fitting, ferrule] : [fitting])),
    ),
    forbidden: once(FAULTS.flatMap(fault => pairs.flatMap(pair => fault(hose, pair) ?? []))),
    ratingMissing: once(
      pairs.flatMap(({ fitting }) => (fitting.workingPressure === undefined ? `rating missing: ${fitting.fitting}` : [])),
    ),
  };
}

const coupled = remembered<CoupledHose>();

/**
 * A hose with two fittings; worked out once for the same three names.
 * @throws TradeError `notFound` for a part that is unknown or was left out, and for a ferrule of the crimp rows that was left out
 */
export function coupledHose(catalogue: Catalogue, hose: string, fittings: readonly [string, string]): CoupledHose {
  return coupled(catalogue, `${hose}\u001f${fittings[0]}\u001f${fittings[1]}`, () => couple(catalogue, hose, fittings));
}
