// Whether CRIMPCAUSE says what the independent trial of its rule says, book by book. BOOKS=50 for a quicker look.
import { crimpCause } from '../src/core/quality/causes/crimpCause';
import { analyse, decide, report, tQ, type TrialBook } from '../tests/cases/crimpCause/trial.mjs';
import { crimpsOf, PLANTED, plantedBooks, SIZES } from './plantedBooks';

const BOOKS = Number(process.env.BOOKS ?? 100);
const SEED = 20261204;

/** Millionths of a tolerance; 0 without a sign. */
const millionths = (offset: number) => String(Math.round(offset * 1e6) + 0);

/** The trial's finding, its rows and its offset as one text. */
function ofTrial({ rows }: TrialBook): string {
  const analysis = analyse(rows, 1);
  if (analysis.finding) return analysis.finding;
  const { m, mSure, C, D, Cu, Du } = decide(analysis);
  if (!mSure) return 'cannot tell';
  const list = (names: Iterable<string>) => [...names].sort().join();
  const { m: offset, df } = report(analysis, tQ);
  return [m !== 0, list(C.keys()), list(Cu), list(D.keys()), list(Du), df > 0 ? millionths(offset) : ''].join(' / ');
}

function ofProduct(book: TrialBook): string {
  const { finding, machine, combinations, dies, scatter } = crimpCause({
    crimps: crimpsOf(book),
    confidence: 0.95,
    actionShare: 0.5,
  });
  if (finding === 'NOT ENOUGH DATA') return finding;
  if (!machine.isSure) return 'cannot tell';
  const list = (rows: readonly { name: string; finding: string }[], word: string) =>
    rows
      .flatMap(row => (row.finding === word ? [row.name] : []))
      .sort()
      .join();
  const rows = [
    list(combinations, 'OWN SETTING'),
    list(combinations, 'CANNOT TELL'),
    list(dies, 'DIE'),
    list(dies, 'CANNOT TELL'),
  ];
  return [machine.correction !== 0, ...rows, Number.isFinite(scatter) ? millionths(machine.offset!) : ''].join(' / ');
}

for (const size of SIZES) {
  let [same, all] = [0, 0];
  for (const planted of PLANTED) {
    for (const book of plantedBooks(size, planted, BOOKS, SEED)) {
      const [trial, product] = [ofTrial(book), ofProduct(book)];
      all += 1;
      if (trial === product) same += 1;
      else console.log(`${size}, ${planted}: trial ${trial}; CRIMPCAUSE ${product}`);
    }
  }
  console.log(`${size}: ${same} of ${all} books as in the trial`);
}
