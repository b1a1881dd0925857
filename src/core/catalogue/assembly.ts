import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { cellNumber } from './cellNumber';
import { coupledHose, type CoupledHose } from './coupledHose';

/** A hose with two fittings. Lengths, pressure and mass are in the catalogue's units. */
export interface Assembly {
  readonly cutLength: Decimal;
  /** Of the weakest part; undefined where a part's rating is missing. */
  readonly workingPressure: number | undefined;
  /** Hose, fittings, and the ferrules that the crimp rows name; undefined where a part's mass is missing. */
  readonly mass: number | undefined;
  /** What is wrong with it; none where it may be made. */
  readonly wrong: readonly string[];
}

/** Free hose between the couplings against the shop's shortest; where the rates name none, the couplings must not meet in the hose. */
function lengthProblems(catalogue: Catalogue, cut: Decimal, { inserted, shortestCut, depthMissing }: CoupledHose): string[] {
  const shortest = shortestCut ?? inserted;
  if (cut.lt(shortest)) {
    const unit = catalogue.units.length.symbol;
    return [`too short: ${cut.minus(inserted)} ${unit} of free hose, at least ${shortest.minus(inserted)} ${unit}`];
  }
  return shortestCut ? depthMissing.map(fitting => `insertion depth missing: ${fitting}`) : [];
}

/**
 * Cut length, rating and mass of a hose with two fittings, and what is wrong with it.
 * @param overall overall length, in the unit of Fittings' Cut-off
 * @throws TradeError `notFound` for an unknown part; `impossible` where the cut-offs leave no hose
 */
export function assembly(catalogue: Catalogue, hose: string, fittingA: string, fittingB: string, overall: Decimal): Assembly {
  const parts = coupledHose(catalogue, hose, [fittingA, fittingB]);
  const cut = overall.minus(parts.cutOffs);
  if (cut.lte(0)) {
    const advice = 'too short, the cut-offs leave no hose; check overall length and cut-offs';
    throw new TradeError('impossible', 'cut length', `would be ${cut}`, advice);
  }
  return {
    cutLength: cut,
    workingPressure: parts.workingPressure,
    mass: parts.mass && cellNumber(cut.toNumber() * parts.mass.perLength + parts.mass.parts),
    wrong: [...parts.wrong, ...lengthProblems(catalogue, cut, parts)],
  };
}
