import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { partKey } from './partName';
import type { Hose } from './tables/hosesTable';

/** True where the table Derating says what a hose loses when it is hot; else its working pressure is taken as it stands. */
export const hasDerating = (catalogue: Catalogue, { hose }: Pick<Hose, 'hose'>): boolean =>
  catalogue.index.derating.has(partKey(hose));

/**
 * Working pressure of a hose at a temperature, by the table Derating: the factor of the next stated temperature at or above it, so that
 * nothing is read into the gap between two of them. Without rows for the hose its working pressure holds up to its hottest.
 * @returns undefined where the table ends below that temperature or a row of the hose was left out: not known
 */
export function pressureAt(catalogue: Catalogue, hose: Hose, temperature: Decimal): Decimal | undefined {
  const full = new Decimal(hose.workingPressure);
  const rows = catalogue.index.derating.get(partKey(hose.hose));
  if (!rows) return full;
  if (rows.some(entry => entry.problem)) return undefined;
  const row = rows.find(entry => temperature.lte(entry.row!.temperature))?.row;
  return row && full.times(row.factor);
}
