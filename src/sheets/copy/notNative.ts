/** Why something stays a value in a copy: part of a sentence. */
export class NotNative extends Error {}
