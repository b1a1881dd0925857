/** What the core says of a value as a sentence of its own: with a capital letter. */
export const asSentence = (message: string): string => message.charAt(0).toUpperCase() + message.slice(1);
