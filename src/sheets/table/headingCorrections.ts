/** What somebody said by hand: heading (in lower case) → role, or "" for none. */
export type HeadingCorrections = ReadonlyMap<string, string>;

/** A heading as it is remembered. */
export const correctionKey = (heading: string): string => heading.replace(/\s+/g, ' ').trim().toLowerCase();
