import { isTurned, type BenchCard } from '../jobs/benchCard';

/** Pieces with a row of readings on the first card of a line; fewer where the clock picture stands beside the steps. */
const [FIRST, FIRST_TURNED] = [6, 3] as const;
/** And on each further card. */
const FURTHER = 16;

/** One card of a line: the first has all there is to know, further ones go on with the readings. */
export interface CardPart {
  readonly part: number;
  readonly of: number;
  /** Names of the pieces whose readings are written on it. */
  readonly pieces: readonly string[];
}

/** Names of a line's pieces: their numbers where they were planned, else 1, 2, …; those that are still open are counted on. */
function pieceNames({ quantity, pieces = [] }: BenchCard): readonly string[] {
  const planned = pieces.filter(({ isScrapped }) => !isScrapped).map(({ piece }) => piece);
  const open = Math.max(0, Math.max(1, quantity) - planned.length);
  return [...planned, ...Array.from({ length: open }, (_, index) => String(pieces.length + index + 1))];
}

/** The cards of a line: every piece has its row of readings. */
export function cardParts(card: BenchCard): readonly CardPart[] {
  const names = pieceNames(card);
  const first = isTurned(card) ? FIRST_TURNED : FIRST;
  const groups = [names.slice(0, first)];
  for (let next = first; next < names.length; next += FURTHER) groups.push(names.slice(next, next + FURTHER));
  return groups.map((pieces, index) => ({ part: index + 1, of: groups.length, pieces }));
}
