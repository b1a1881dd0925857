import { Decimal } from '../units/decimal';
import { partKey } from './partName';
import type { Fitting } from './tables/fittingsTable';
import type { Hose } from './tables/hosesTable';

/**
 * Sizes match where the fitting's bore agrees with the hose's within 2 %. What stands in Size is shown and decides nothing: DN 19 and DN 20
 * are one bore, and some dash numbers are larger than the bore they stand for.
 */
export function sizesMatch(hose: Pick<Hose, 'bore'>, fitting: Pick<Fitting, 'bore'>): boolean {
  return new Decimal(hose.bore).minus(fitting.bore).abs().times(50).lte(hose.bore);
}

export function familiesMatch(hose: Hose, fitting: Fitting): boolean {
  return partKey(hose.family) === partKey(fitting.family);
}

/** A ferrule is listed among the fittings, but is no end of a hose by itself. */
export function isFerrule(fitting: Pick<Fitting, 'endForm'>): boolean {
  return partKey(fitting.endForm) === 'ferrule';
}
