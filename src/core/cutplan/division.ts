import { floor } from '../arithmetic';
import type { GridProblem } from './gridProblem';

/**
 * Tells by division alone that the stock cannot suffice: the pieces of one width and more have to come from stock that is as long, which
 * must have their length in all, and give as many pieces of that width.
 * @returns true where there is surely no plan; false says nothing
 */
export function isShortByDivision({ widths, demand, stock }: GridProblem): boolean {
  let length = 0;
  let pieces = 0;
  return widths.some((width, item) => {
    length += demand[item]! * width;
    pieces += demand[item]!;
    let room = 0;
    let places = 0;
    for (const { capacity, count } of stock) {
      if (capacity < width) continue;
      room += count * capacity;
      places += count * floor(capacity / width);
    }
    return length > room || pieces > places;
  });
}
