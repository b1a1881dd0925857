import type { Asked } from './tableAnswers';

/** Something that the sheet does not say; until it is answered, the rows that need it are refused. */
export interface TableQuestion {
  readonly asked: Asked;
  /** What it is about, as it is remembered: a heading, or words of cells. */
  readonly heading: string;
  /** `C: Length` */
  readonly column: string;
  readonly sentence: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  /** The likeliest answer; only proposed. */
  readonly proposal?: string | undefined;
  /** Why no row of the table can be taken until it is answered. */
  readonly refusal?: string | undefined;
}
