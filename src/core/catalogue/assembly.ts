import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { cellNumber } from './cellNumber';
import { coupledHose, type CoupledHose } from './coupledHose';
import { hoseInUse, type AssemblyUse } from './hoseInUse';

/** A hose with two fittings. Lengths, pressure and mass are in the catalogue's units. */
export interface Assembly {
  readonly cutLength: Decimal;
  /** Of the weakest part, the hose derated at the temperature; undefined where a part has no rating. */
  readonly workingPressure: number | undefined;
  /** Hose, fittings, and the ferrules that the crimp rows name; undefined where a part's mass is missing. */
  readonly mass: number | undefined;
  /** What is wrong with it; none where it may be made. */
  readonly wrong: readonly string[];
}

/** Free hose between the couplings against the shop's shortest; where the rates name none, the couplings must not meet in the hose. */
export function tooShort(catalogue: Catalogue, cut: Decimal, { inserted, shortestCut }: CoupledHose): string[] {
  const shortest = shortestCut ?? inserted;
  if (cut.gt(0) && cut.gte(shortest)) return [];
  const unit = catalogue.units.length.symbol;
  return [`too short: ${cut.minus(inserted)} ${unit} of free hose, at least ${shortest.minus(inserted)} ${unit}`];
}

/** What keeps the free hose from being checked. */
function unchecked({ hose, shortestCut, outsideMissing, depthMissing }: CoupledHose): string[] {
  return [
    ...(outsideMissing ? [`outside diameter missing: ${hose.hose}`] : []),
    ...(shortestCut ? depthMissing.map(fitting => `insertion depth missing: ${fitting}`) : []),
  ];
}

function lengthProblems(catalogue: Catalogue, cut: Decimal, parts: CoupledHose): string[] {
  const short = tooShort(catalogue, cut, parts);
  return short.length > 0 ? short : unchecked(parts);
}

const weaker = (a: number | undefined, b: number | undefined) =>
  a === undefined || b === undefined ? undefined : Math.min(a, b);

/**
 * Cut length, rating and mass of a hose with two fittings, and what is wrong with it.
 * @param overall overall length, in the unit of Fittings' Cut-off
 * @param use temperature and fluid, where they are known: the rating is derated, and the hose's limits are checked
 * @throws TradeError `notFound` for an unknown part; `impossible` where the cut-offs leave no hose
 */
export function assembly(
  catalogue: Catalogue,
  hose: string,
  fittingA: string,
  fittingB: string,
  overall: Decimal,
  use: AssemblyUse = {},
): Assembly {
  const parts = coupledHose(catalogue, hose, [fittingA, fittingB]);
  const cut = overall.minus(parts.cutOffs);
  if (cut.lte(0)) {
    const advice = 'too short, the cut-offs leave no hose; check overall length and cut-offs';
    throw new TradeError('impossible', 'cut length', `would be ${cut}`, advice);
  }
  const inUse = hoseInUse(catalogue, parts.hose, use);
  return {
    cutLength: cut,
    workingPressure: weaker(inUse.workingPressure, parts.fittingPressure),
    mass: parts.mass && cellNumber(cut.toNumber() * parts.mass.perLength + parts.mass.parts),
    wrong: [...parts.forbidden, ...inUse.wrong, ...parts.ratingMissing, ...lengthProblems(catalogue, cut, parts)],
  };
}
