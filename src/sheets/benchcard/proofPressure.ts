import type { Decimal } from '../../core/units/decimal';

/** The user's rule for the proof test. */
export interface ProofRule {
  /** Proof pressure ÷ maximum working pressure. */
  readonly factor: Decimal;
  /** How long it is held, in the user's words: `30 to 60 s`. */
  readonly hold: string;
  /** Where the rule comes from, printed beside it. */
  readonly source: string;
}

/** Shown in the fields until the user writes another. Source: ISO 6605:2017, 5.2. */
export const ISO_6605_RULE = { factor: '2', hold: '30 to 60 s', source: 'ISO 6605:2017, 5.2' } as const;

/** The proof test in words; says so where the working pressure is not known. */
export function proofText(workingPressure: Decimal | undefined, unit: string, { factor, hold, source }: ProofRule): string {
  const rule = `${factor} × working pressure${source && `, ${source}`}`;
  if (!workingPressure) return `nothing before its working pressure is known: then at ${rule}, for ${hold}.`;
  return `at ${workingPressure.times(factor).toDecimalPlaces(2)} ${unit} for ${hold} (${rule}). No leaks.`;
}
