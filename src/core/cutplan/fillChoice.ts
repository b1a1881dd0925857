import { floor, min } from '../arithmetic';

/** The best filling of one capacity. */
export interface Fill {
  readonly value: number;
  /** No filling is worth more; equals `value` where the search was complete. */
  readonly upper: number;
  /** Pieces of each width. */
  readonly counts: Int32Array;
  /** Other good fillings that came up on the way. */
  readonly others?: readonly Int32Array[];
}

/** Pieces of one width that may go into a filling. */
export interface Choice {
  readonly item: number;
  readonly width: number;
  readonly value: number;
  readonly limit: number;
  readonly ratio: number;
}

/** What fits, best value by width first. */
export function everyChoice(
  widths: readonly number[],
  values: ArrayLike<number>,
  limits: ArrayLike<number>,
  largest: number,
): Choice[] {
  const choices: Choice[] = [];
  for (let item = 0; item < widths.length; item++) {
    const width = widths[item]!;
    const value = values[item]!;
    const limit = min(limits[item]!, floor(largest / width));
    if (limit > 0) choices.push({ item, width, value, limit, ratio: value / width });
  }
  return choices.sort((a, b) => b.ratio - a.ratio || a.item - b.item);
}

/** What fits and is worth something, best value by width first. */
export function choicesOf(
  widths: readonly number[],
  values: ArrayLike<number>,
  limits: ArrayLike<number>,
  largest: number,
): Choice[] {
  return everyChoice(widths, values, limits, largest).filter(choice => choice.value > 0);
}
