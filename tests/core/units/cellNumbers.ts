import { Decimal } from '../../../src/core/units/decimal';

/** Random numbers from 0 up to 1. */
export type Uniform = () => number;

/** One of some choices. */
export const pick = <T>(uniform: Uniform, choices: readonly T[]): T => choices[Math.floor(uniform() * choices.length)]!;

/** A whole number between two, both included. */
export const wholeBetween = (uniform: Uniform, from: number, to: number): number =>
  from + Math.floor(uniform() * (to - from + 1));

/** A cell's number as decimal.js reads it, without the fast way. */
export const slowly = (value: number): Decimal => new Decimal(value.toPrecision(15));

const short = (uniform: Uniform) => {
  const decimals = wholeBetween(uniform, 0, 5);
  return Number(`${wholeBetween(uniform, -99_999, 99_999)}e-${decimals}`);
};

const kinds: readonly ((uniform: Uniform) => number)[] = [
  short,
  short,
  // As a sheet computes it: with binary noise behind the digits that were typed.
  uniform => (short(uniform) * 1.1) / 3,
  uniform => short(uniform) + short(uniform),
  // As many digits as a cell holds, so that whole numbers of 2^53 are reached by a sum, a product or another number's decimals.
  uniform => Number(`${wholeBetween(uniform, -999_999_999_999_999, 999_999_999_999_999)}e-${wholeBetween(uniform, 0, 18)}`),
  uniform =>
    Number(`${pick(uniform, [900_719_925_474_099, 1e15 - 1, 1e14, 450_359_962_737_049])}e-${wholeBetween(uniform, 0, 15)}`),
  uniform =>
    pick(uniform, [0, -0, 1, -1, 10, 0.1, 1e9, 1e-7, 1e15, 1e16, 1e21, 1e22, 1e23, 1e-22, 1e-23, 1e300, 1e-300, 2 ** 53]),
  uniform => (uniform() - 0.5) * 10 ** wholeBetween(uniform, -30, 30),
];

/** A number that a cell may hold: mostly short, often at a limit of what a whole number or a double can keep. */
export const cellNumber = (uniform: Uniform): number => pick(uniform, kinds)(uniform);
