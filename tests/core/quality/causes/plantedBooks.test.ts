import { byAverage, byCause, byFormerRule, outcomeOf, type Advice } from '../../../../bench/causeAdvice';
import { PLANTED, plantedBooks, type BookSize } from '../../../../bench/plantedBooks';
import type { TrialBook } from '../../../cases/crimpCause/trial.mjs';

// Planted truth, not the tool, says what is right; many more books in bench/README.md.
const BOOKS: Readonly<Record<BookSize, number>> = { ample: 1, small: 8, thin: 8 };

function shareOf(size: BookSize, advise: (book: TrialBook) => Advice) {
  const books = PLANTED.flatMap(planted => plantedBooks(size, planted, BOOKS[size], 7));
  const outcomes = books.map(book => outcomeOf(advise(book), book.truth));
  const share = (wanted: string) => outcomes.filter(outcome => outcome.startsWith(wanted)).length / outcomes.length;
  return { right: share('right'), wrong: share('wrong') };
}

test.each<[BookSize, number, number]>([
  ['ample', 0, 0.95],
  ['small', 0.02, 0.65],
  ['thin', 0.04, 0.25],
])('%s books: confident and wrong in at most %d, right in at least %d', (size, wrong, right) => {
  const cause = shareOf(size, byCause);
  expect(cause.wrong).toBeLessThanOrEqual(wrong);
  expect(cause.right).toBeGreaterThanOrEqual(right);
});

test('the rule before it and the plain average were wrong with confidence in every fourth book or more', () => {
  for (const size of ['small', 'thin'] as const) {
    expect(shareOf(size, byFormerRule).wrong).toBeGreaterThan(0.2);
    expect(shareOf(size, byAverage).wrong).toBeGreaterThan(0.5);
  }
});
