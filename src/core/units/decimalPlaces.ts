/**
 * Decimals of numbers in texts and cells: the one place that says how far what is exact in the arithmetic is rounded where somebody reads it.
 */

/** Small lengths, which a bench reads: a thousandth of a millimetre, a ten-thousandth of an inch. */
export const SMALL_PLACES = { mm: 3, in: 4 } as const;

/** Diameters and deviations as a caliper shows them. */
export const CALIPER_PLACES = { mm: 2, in: 4 } as const;

/** Lengths of hose: a hundredth of a millimetre, of a metre the same, inches that are no 64ths. */
export const HOSE_PLACES = { mm: 2, m: 5, in: 4 } as const;

/** Means, deviations and lengths that are written into a cell to be read. */
export const READ_PLACES = 4;

/** Turns of a screw: a hand turns one to about a hundredth of a turn at best. */
export const TURN_PLACES = 2;

/** Changes of diameter by a digit or a turn, converted. */
export const STEP_PLACES = 5;

/** Amounts that are counted in a longer unit: metres of hose. */
export const AMOUNT_PLACES = 6;

/** Converted values that further formulas reckon with. */
export const CONVERTED_PLACES = 9;

/** Working pressures that were converted: whole bar or psi, but tenths of a megapascal. */
export const RATING_PLACES: Readonly<Record<string, number>> = { MPa: 1 };
