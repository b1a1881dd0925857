import type { Answer } from '../cells/answer';
import type { CauseSince, CrimpCause, NextMeasurement } from '../core/quality/causes/crimpCauseResult';

/** What a list calls its things: names as they came, and the cells `when` and the numbers of its rows by place. */
export interface ListWords {
  readonly combination: (key: string) => Answer;
  readonly die: (key: string) => Answer;
  readonly when: (place: number) => Answer;
  /** From 0, blank rows included. */
  readonly row: (place: number) => number;
}

const HEADING = ['Combination', 'Crimps', 'Mean deviation', 'Correction', 'Finding', 'Since', 'Low', 'High'];
const COUNTS = ['one', 'two', 'three'];

/** Which combination to measure next, and with which die. */
function nextText({ crimps, combination, die, otherDie }: NextMeasurement, words: ListWords): string {
  if (combination === undefined) {
    const missing = crimps / 2;
    return `${COUNTS[missing - 1]} more combination${missing === 1 ? '' : 's'}`;
  }
  const again = String(words.combination(combination));
  if (otherDie) return `${again}, with another die that fits`;
  return die === undefined ? again : `${again}, die ${String(words.die(die))}`;
}

/** The finding as the table of CRIMPCAUSE. */
export function causeTable(cause: CrimpCause, words: ListWords): Answer[][] {
  const { machine, dies, combinations, setAside, next } = cause;
  const since = (change: CauseSince | undefined) => (change ? words.when(change.place) : '');
  const limits = (interval: readonly [number, number] | undefined): readonly Answer[] => interval ?? ['', ''];
  return [
    HEADING,
    ['All', cause.crimps, machine.offset, machine.correction, cause.finding, since(machine.since), ...limits(machine.interval)],
    ...dies.map(die => [`Die ${String(words.die(die.name))}`, die.crimps, die.offset, 0, die.finding, since(die.since), '', '']),
    ...combinations.map(({ name, crimps, offset, correction, finding, interval }) => {
      return [words.combination(name), crimps, offset, correction, finding, '', ...limits(interval)];
    }),
    ...setAside.map(({ place, offset }) => [`Crimp ${words.row(place) + 1}`, 1, offset, 0, 'SET ASIDE', '', '', '']),
    ...(next ? [['Measure next', next.crimps, '', '', nextText(next, words), '', '', '']] : []),
  ];
}
