import type { JobLine } from './jobLine';

/** What a rating rests on, in the words of every paper. */
export const NO_DERATING = 'no derating stated';
export const NOT_DERATED = 'temperature not stated: not derated';
/** The catalogue has no column of temperatures, so that it cannot be asked about one. */
export const NO_TEMPERATURES = 'no temperatures in the catalogue: not derated';
export const FLUID_NOT_CHECKED = 'fluid not checked';
/** Couplings have a say in the rating of an assembly. */
export const HOSE_ALONE = 'hose alone: no rating of an assembly';

/** What a card says of the rating besides its number; none where nothing is to be said. */
export function ratingNotes({ pressure, temperature, hasDerating, hose }: JobLine): readonly string[] {
  if (!temperature || !pressure) return [];
  if (!hasDerating) return [`${NO_DERATING} for ${hose}`];
  return pressure.from === 'weakest part' ? [`rated at ${temperature.value} ${temperature.unit.symbol}`] : [];
}

const unknown = ({ ends }: JobLine) => (ends.every(({ fitting }) => fitting === '') ? HOSE_ALONE : 'rating not known');

/** Rating of a line with what it rests on: `250 bar at 80 °C, no derating stated; fluid not checked`. */
export function ratingText(line: JobLine): string {
  const { pressure, temperature, hasDerating, fluid } = line;
  const rated = pressure ? `${pressure.value} ${pressure.unit.symbol}` : unknown(line);
  const heat = temperature ? ` at ${temperature.value} ${temperature.unit.symbol}${hasDerating ? '' : `, ${NO_DERATING}`}` : '';
  return `${rated}${heat}; ${[...(temperature ? [] : [NOT_DERATED]), fluid || FLUID_NOT_CHECKED].join('; ')}`;
}
