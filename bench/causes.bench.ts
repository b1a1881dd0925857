// How often CRIMPCAUSE gives the right advice for now, beside its former rule and "average everything and adjust the machine".
// BOOKS=50 for a quicker look.
import { byAverage, byCause, byFormerRule, outcomeOf, type Advice, type Outcome } from './causeAdvice';
import { PLANTED, plantedBooks, SIZES, type BookSize } from './plantedBooks';
import type { TrialBook } from '../tests/cases/crimpCause/trial.mjs';

const BOOKS = Number(process.env.BOOKS ?? 300);
const SEED = 20261204;
const TITLES: Readonly<Record<BookSize, string>> = {
  ample: 'Ample books: 30 combinations, 400 crimps, 40 working days, 5 dies',
  small: 'Small books: 5 combinations, 30 crimps, 5 days, 2 dies (3 where a die is planted)',
  thin: 'Thin books: 3 to 5 combinations, 2 or 3 crimps of each, 5 days, 2 dies (3 where a die is planted)',
};
const OUTCOMES: readonly Outcome[] = ['right', 'right, rows open', 'wrong', 'cannot tell'];

type Counts = Record<Outcome, number>;
const nothing = (): Counts => ({ right: 0, 'right, rows open': 0, wrong: 0, 'cannot tell': 0 });

function count(books: readonly TrialBook[], advise: (book: TrialBook) => Advice): Counts {
  const counts = nothing();
  for (const book of books) counts[outcomeOf(advise(book), book.truth)] += 1;
  return counts;
}

const line = (...cells: readonly string[]) => console.log(`| ${cells.join(' | ')} |`);

function report(size: BookSize): void {
  console.log(`\n${TITLES[size]}; ${BOOKS} books of each kind, seed ${SEED}\n`);
  line('planted', 'right', 'right, rows open', 'confident and wrong', 'cannot tell', 'former rule: wrong', 'average: wrong');
  line(...Array<string>(7).fill('---'));
  const total = { cause: nothing(), former: 0, average: 0 };
  for (const planted of PLANTED) {
    const books = plantedBooks(size, planted, BOOKS, SEED);
    const percent = (counted: number) => `${((100 * counted) / books.length).toFixed(1)} %`;
    const counts = count(books, byCause);
    const [former, average] = [count(books, byFormerRule).wrong, count(books, byAverage).wrong];
    line(planted, ...OUTCOMES.map(outcome => percent(counts[outcome])), percent(former), percent(average));
    for (const outcome of OUTCOMES) total.cause[outcome] += counts[outcome] / PLANTED.length;
    total.former += former / PLANTED.length;
    total.average += average / PLANTED.length;
  }
  const percent = (counted: number) => `${((100 * counted) / BOOKS).toFixed(1)} %`;
  line('all kinds', ...OUTCOMES.map(outcome => percent(total.cause[outcome])), percent(total.former), percent(total.average));
}

for (const size of SIZES) report(size);
