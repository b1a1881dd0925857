import { errorSentence } from './errorSentence';
/** A host refused to write; its message says why and what of it stands in the workbook now. */
export class RefusedWriting extends Error {
  constructor(
    /** Why, in a sentence. */
    readonly reason: string,
    /** What stands, in a sentence. */
    readonly left: string,
  ) {
    super(`${reason} ${left}`);
    this.name = 'RefusedWriting';
  }
}

const sentence = (text: string) => (/[.!?]$/.test(text) ? text : `${text}.`);

/** Why something was not written, without what of it stands: for those who put that right and say it themselves. */
export function reasonOfRefusal(error: unknown): string {
  if (error instanceof RefusedWriting) return error.reason;
  return sentence(errorSentence(error));
}

const SAYS_WHAT_STANDS =
  /Nothing was written\.|Nothing of it stands|Not put back: |All cells are written\.|could not be taken away/;

/** Why something was not written, with what stands in the workbook: nothing, where the sentence does not say it itself. */
export const withWhatStands = (reason: string): string =>
  SAYS_WHAT_STANDS.test(reason) ? reason : `Nothing was written: ${reason}`;
