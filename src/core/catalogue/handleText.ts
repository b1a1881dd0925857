import type { CatalogueUnits } from './catalogueUnits';
import { countedText } from '../countedText';

const HANDLE = /^CAT-[0-9a-f]{8}\b/;

/** Units as a handle prints them: those of crimp diameters and temperatures where they are not the usual companions. */
function unitText({ length, diameter, pressure, temperature }: CatalogueUnits): string {
  const symbols = [length.symbol];
  if (diameter.symbol !== length.symbol) symbols.push(`crimps ${diameter.symbol}`);
  symbols.push(pressure.symbol);
  if (temperature && temperature.symbol !== '°C') symbols.push(temperature.symbol);
  return symbols.join(', ');
}

/** What a handle tells besides its hash. */
export interface HandleFacts {
  readonly digest: string;
  readonly units: CatalogueUnits;
  readonly hoses: number;
  readonly fittings: number;
  readonly crimps: number;
  readonly leftOut: number;
}

/**
 * The text of a handle.
 * @example handleText(…) // CAT-7f3a2c1e (mm, bar; 12 hoses, 30 fittings, 64 crimps)
 */
export function handleText({ digest, units, hoses, fittings, crimps, leftOut }: HandleFacts): string {
  const counts = [
    countedText(hoses, 'hose', 'hoses'),
    countedText(fittings, 'fitting', 'fittings'),
    countedText(crimps, 'crimp', 'crimps'),
  ].join(', ');
  const rest = leftOut > 0 ? `; ${countedText(leftOut, 'row', 'rows')} left out` : '';
  return `CAT-${digest.slice(0, 8)} (${unitText(units)}; ${counts})${rest}`;
}

/** True where a text looks like a handle of ours. */
export function isHandle(text: string): boolean {
  return HANDLE.test(text.trim());
}
