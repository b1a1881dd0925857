/** A reason that nothing can be quoted, bought, checked or compared, ready to be shown. */
export class NothingToQuote extends Error {}
