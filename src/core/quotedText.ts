const MOST_SHOWN = 40;

/** A text of a cell cut to a length that fits into a sentence: a cell holds up to 32,767 characters. */
export const shortText = (text: string): string => (text.length > MOST_SHOWN ? `${text.slice(0, MOST_SHOWN)}…` : text);

/** The same without the spaces around it. */
export const shownText = (text: string): string => shortText(text.trim());

/** The same in quotation marks. */
export const quotedText = (text: string): string => `"${shownText(text)}"`;
