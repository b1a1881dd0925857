// Simulated books of crimps with planted causes, as the trial of the rule generates them.
import { book, type TrialBook } from '../tests/cases/crimpCause/trial.mjs';
import type { CrimpOfMachine } from '../src/core/quality/causes/crimpSeries';

export const SIZES = ['ample', 'small', 'thin'] as const;
export type BookSize = (typeof SIZES)[number];

/** What is planted; "campaign": combinations are made one after the other. */
export const PLANTED = [
  'fine',
  'fine campaign',
  'machine',
  'setting',
  'machine+setting',
  'shift',
  'shift campaign',
  'drift',
  'drift campaign',
  'recal',
  'recal campaign',
  'drift-recal',
  'die',
  'two dies',
  'die wears',
  'shift+setting',
  'die+machine',
] as const;
export type PlantedCause = (typeof PLANTED)[number];

/** The same books for the same seed, on every machine. */
export function plantedBooks(size: BookSize, planted: PlantedCause, count: number, seed: number): TrialBook[] {
  const start = [...(size + planted)].reduce((hash, letter) => (Math.imul(hash, 31) + letter.charCodeAt(0)) | 0, seed);
  return Array.from({ length: count }, (_, index) => book(size, planted, 1_000_003 * (index + 1) + start));
}

/** Crimps of a book as the rule takes them; the tolerance is 1. */
export function crimpsOf({ rows }: Pick<TrialBook, 'rows'>): CrimpOfMachine[] {
  return rows.map(({ c, g, t, d }) => ({ combination: c, deviation: d, tolerance: 1, die: g, time: t }));
}
