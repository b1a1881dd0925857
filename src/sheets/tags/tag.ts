import type { BenchCard } from '../jobs/benchCard';
import { PieceNumbers } from '../pieces/nextNumber';
import { lengthText } from '../table/lengthText';

/** What stands on the tag of one assembly. Source of the marking: DGUV 209-071, 4.3 (maker, maximum pressure with unit, year and month). */
export interface Tag {
  readonly maker: string;
  readonly number: string;
  /** `max 275 bar`; undefined where the rating is not known: such an assembly gets no tag. */
  readonly pressure: string | undefined;
  /** `2026-10`. */
  readonly made: string;
  readonly length: string;
  readonly label: string;
  /** Lot of the hose; "" where it is not known. */
  readonly lot?: string;
  /** `2032-10`; "" where nobody says how long it may be used. */
  readonly useBy?: string;
}

/** How tags are numbered and marked. */
export interface TagOptions {
  /** The user's own name as maker of the assembly. */
  readonly maker: string;
  /** Stands before the line where the sheet gives no assembly number. */
  readonly prefix: string;
  /** Day of making, `2026-10-05`. */
  readonly today: string;
  /** Until when assemblies made today may be used, `2032-10`, where their rows on sheet Pieces do not say. */
  readonly useBy?: string;
}

interface TaggedPiece {
  readonly number: string;
  readonly lot: string;
  readonly useBy: string;
}

/** The pieces of a line as the sheet Pieces numbers them; those that nobody has planned yet get the numbers they will have. */
function piecesFor({ assembly, line, quantity, pieces = [] }: BenchCard, prefix: string): readonly TaggedPiece[] {
  const planned = pieces.filter(({ isScrapped }) => !isScrapped).map(({ piece, lot, useBy }) => ({ number: piece, lot, useBy }));
  const numbers = new PieceNumbers(pieces);
  const open = Math.max(0, quantity - planned.length);
  const next = Array.from({ length: open }, () => ({ number: numbers.next(assembly || `${prefix}${line}`), lot: '', useBy: '' }));
  return [...planned, ...next];
}

/** What stands in the last lines of a tag: made, use by, length, lot. */
export const smallLines = ({ made, useBy = '', length, lot = '' }: Tag): string =>
  [made, useBy && `use by ${useBy}`, length, lot && `lot ${lot}`].filter(Boolean).join(' · ');

const makeable = (cards: readonly BenchCard[]) => cards.filter(({ isStop }) => !isStop);

/** One tag an assembly, in the order of the lines; lines that must not be made get none. */
export function tagsOf(cards: readonly BenchCard[], { maker, prefix, today, useBy: until = '' }: TagOptions): readonly Tag[] {
  return makeable(cards).flatMap(card =>
    piecesFor(card, prefix).map(({ number, lot, useBy }) => ({
      maker,
      number,
      pressure: card.workingPressure && `max ${card.workingPressure} ${card.pressureUnit}`,
      made: today.slice(0, 7),
      length: card.overall ? `${lengthText(card.overall, card.unit)} ${card.unit}` : '',
      label: card.label,
      lot,
      useBy: useBy || until,
    })),
  );
}

/** What keeps tags from being printed, or is worth knowing first. */
export function tagProblems(cards: readonly BenchCard[], tags: readonly Tag[], { maker }: TagOptions): readonly string[] {
  const stopped = cards.filter(({ isStop }) => isStop).map(({ line }) => line);
  const unrated = makeable(cards)
    .filter(card => !card.workingPressure)
    .map(card => card.line);
  const numbers = new Set<string>();
  const twice = new Set(tags.filter(tag => numbers.has(tag.number) || !numbers.add(tag.number)).map(tag => tag.number));
  return [
    ...(stopped.length > 0 ? [`STOP, so no tags: line ${stopped.join(', ')}.`] : []),
    ...(maker.trim() === '' ? ['Enter your name as maker: a tag without it is no marking.'] : []),
    ...(unrated.length > 0 ? [`No working pressure, so no tags, for line ${unrated.join(', ')}.`] : []),
    ...(twice.size > 0 ? [`The same number twice: ${[...twice].join(', ')}.`] : []),
  ];
}
