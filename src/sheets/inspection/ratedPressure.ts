import type { Catalogue } from '../../core/catalogue/catalogue';
import { coupledHose } from '../../core/catalogue/coupledHose';
import { partKey } from '../../core/catalogue/partName';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { readRating } from '../catalogue/ratingDecimals';
import type { CrimpRow } from '../crimps/crimpRow';
import type { Pressure } from './inspectionRecord';

/** The one name that all share; undefined where they differ or one is blank. */
function shared(names: readonly string[]): string | undefined {
  const [first] = names;
  return first && names.every(name => partKey(name) === partKey(first)) ? first : undefined;
}

/**
 * Working pressure of the weakest part by the catalogue.
 * @returns undefined where the rows do not name one hose and one coupling for each of two ends, or a part's rating is not known
 */
export function ratedPressure(catalogue: Catalogue, rows: readonly CrimpRow[]): Pressure | undefined {
  const ends = [...new Set(rows.map(({ end }) => partKey(end)))];
  const hose = shared(rows.map(row => row.hose));
  const [a, b] = ends.map(end => shared(rows.filter(row => partKey(row.end) === end).map(({ fitting }) => fitting)));
  if (ends.length !== 2 || !hose || !a || !b) return undefined;
  try {
    const { workingPressure } = coupledHose(catalogue, hose, [a, b]);
    return workingPressure === undefined
      ? undefined
      : { value: readRating(catalogue, new Decimal(workingPressure)), unit: catalogue.units.pressure.symbol };
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}
