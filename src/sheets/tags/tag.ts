import type { BenchCard } from '../jobs/benchCard';
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
}

/** How tags are numbered and marked. */
export interface TagOptions {
  /** The user's own name as maker of the assembly. */
  readonly maker: string;
  /** Stands before the line where the sheet gives no assembly number. */
  readonly prefix: string;
  /** Day of making, `2026-10-05`. */
  readonly today: string;
}

/** Number of one assembly: the sheet's, else prefix and line; a line of several counts its pieces: `117-2`. */
function assemblyNumber({ assembly, line, quantity }: BenchCard, piece: number, prefix: string): string {
  const number = assembly || `${prefix}${line}`;
  return quantity > 1 ? `${number}-${piece}` : number;
}

const makeable = (cards: readonly BenchCard[]) => cards.filter(({ isStop }) => !isStop);

/** One tag an assembly, in the order of the lines; lines that must not be made get none. */
export function tagsOf(cards: readonly BenchCard[], { maker, prefix, today }: TagOptions): readonly Tag[] {
  return makeable(cards).flatMap(card =>
    Array.from({ length: card.quantity }, (_, index) => ({
      maker,
      number: assemblyNumber(card, index + 1, prefix),
      pressure: card.workingPressure && `max ${card.workingPressure} ${card.pressureUnit}`,
      made: today.slice(0, 7),
      length: card.overall ? `${lengthText(card.overall, card.unit)} ${card.unit}` : '',
      label: card.label,
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
