import { crimpsOf, PLANTED, plantedBooks, SIZES, type BookSize, type PlantedCause } from '../../../../bench/plantedBooks';
import { crimpCause } from '../../../../src/core/quality/causes/crimpCause';
import { analyse, decide, next, report, tQ, type TrialBook } from '../../../cases/crimpCause/trial.mjs';

// The trial of the rule (tests/cases/crimpCause/trial.mjs) is a second implementation with dense columns, independent of src.
const BOOKS: Readonly<Record<BookSize, number>> = { ample: 1, small: 4, thin: 4 };
const kinds = SIZES.flatMap(size => PLANTED.map(planted => [size, planted] as const));

/**
 * What is measured next. Where nothing crimped so far would tell, the trial takes the first pair of combination and die; the product asks first for a
 * combination that is open, with any other die: then only how many is compared. So it is where no crimp would tell at all.
 */
function nextWords(
  crimps: number,
  other: boolean,
  gain: number | undefined,
  name?: string,
  die?: string,
  onlyCount = false,
): unknown[] {
  if (gain === undefined || other || onlyCount) return [crimps];
  return [crimps, name, die];
}

/** Findings of the trial in the words of the product. */
function expected(book: TrialBook) {
  const analysis = analyse(book.rows, 1);
  if (analysis.finding) return { finding: analysis.finding };
  const { m, mSure, C, D, Cu, Du } = decide(analysis);
  const isOpen = !mSure || Cu.size > 0 || Du.size > 0;
  const off = [mSure && m !== 0 ? 'MACHINE' : '', D.size > 0 ? 'DIE' : '', C.size > 0 ? 'SETTING' : ''].filter(Boolean);
  const numbers = report(analysis, tQ);
  const message = next(analysis);
  return {
    finding: off.join(' + ') || (isOpen ? 'CANNOT TELL' : 'IN SPEC'),
    offset: numbers.df > 0 ? numbers.m : undefined,
    low: mSure && numbers.half > 0 ? numbers.m - numbers.half : undefined,
    own: analysis.names.map(name => (!mSure || Cu.has(name) ? 'open' : C.has(name) ? 'off' : '')),
    dies: analysis.dies.length > 1 ? analysis.dies.map(name => (!mSure || Du.has(name) ? 'open' : D.has(name) ? 'off' : '')) : [],
    next:
      isOpen && message
        ? nextWords(message.crimps, message.other, message.gain, analysis.names[message.k], analysis.dies[message.g])
        : undefined,
  };
}

function found(book: TrialBook, wanted: ReturnType<typeof expected>) {
  const cause = crimpCause({ crimps: crimpsOf(book), confidence: 0.95, actionShare: 0.5 });
  if (cause.finding === 'NOT ENOUGH DATA') return { finding: cause.finding };
  const word = (finding: string) => (finding === 'CANNOT TELL' ? 'open' : /^(OWN SETTING|DIE)$/.test(finding) ? 'off' : '');
  return {
    finding: cause.finding,
    offset: wanted.offset === undefined ? undefined : cause.machine.offset,
    low: wanted.low === undefined ? undefined : cause.machine.interval?.[0],
    own: cause.combinations.map(({ finding }) => word(finding)),
    dies: cause.dies.map(({ finding }) => word(finding)),
    next:
      wanted.next &&
      cause.next &&
      nextWords(cause.next.crimps, cause.next.otherDie, 1, cause.next.combination, cause.next.die, wanted.next.length === 1),
  };
}

const rounded = (value: unknown) =>
  JSON.parse(JSON.stringify(value), (_, each) => (typeof each === 'number' ? Number(each.toFixed(8)) : each));

test.each(kinds)(
  '%s books, %s: finding, offset, rows and next measurement are those of the trial',
  (size, planted: PlantedCause) => {
    for (const book of plantedBooks(size, planted, BOOKS[size], 20261129)) {
      const wanted = expected(book);
      expect(rounded(found(book, wanted))).toEqual(rounded(wanted));
    }
  },
);
