/** Columns of the paper that can be left out. */
export const PAPER_CHOICES = {
  label: 'Wanted for',
  hose: 'Hose',
  fittings: 'Fittings',
  guard: 'Guard',
  drawing: 'Drawing',
  tolerance: 'Length tolerance',
  use: 'Temperature and fluid',
  pressure: 'Working pressure and what it rests on',
  breaks: 'Prices at other quantities',
} as const;
export type PaperChoice = keyof typeof PAPER_CHOICES;

/** What a quote's paper says beside its lines; all but the number is kept. */
export interface PaperFields {
  readonly ownName: string;
  /** Address, telephone, tax number: a line each. */
  readonly ownAddress: string;
  readonly number: string;
  /** Above the lines. */
  readonly leadText: string;
  /** Below the total: delivery, payment, warranty. */
  readonly terms: string;
  /** Columns that the paper does not have. */
  readonly leftOut: readonly string[];
}

export const FRESH_PAPER: PaperFields = {
  ownName: '',
  ownAddress: '',
  number: '',
  leadText: 'Thank you for your inquiry. We offer:',
  terms: '',
  leftOut: ['use'],
};

/**
 * The number after this one; "" where it ends in no digits.
 * @example nextNumber('2026-009') // 2026-010
 */
export function nextNumber(number: string): string {
  const digits = /\d+$/.exec(number.trim())?.[0];
  if (digits === undefined) return '';
  const next = String(BigInt(digits) + 1n).padStart(digits.length, '0');
  return number.trim().slice(0, -digits.length) + next;
}
