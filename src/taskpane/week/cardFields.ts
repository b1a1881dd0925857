import { ISO_6605_RULE } from '../../sheets/benchcard/proofPressure';

/** Fields of the bench cards before anybody has touched them. */
export const FRESH_CARDS = { ...ISO_6605_RULE, machine: '', pressureUnit: 'bar' };
export type CardFields = { -readonly [Key in keyof typeof FRESH_CARDS]: string };
