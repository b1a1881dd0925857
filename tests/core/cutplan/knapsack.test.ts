import { fillBySearch } from '../../../src/core/cutplan/fillBySearch';
import { fillByTable } from '../../../src/core/cutplan/fillByTable';
import { choicesOf, type Fill } from '../../../src/core/cutplan/fillChoice';
import { fillWithFew } from '../../../src/core/cutplan/fillWithFew';
import { Work } from '../../../src/core/cutplan/work';
import { seeded } from './bruteForce';

/** The most that pieces of limited number can be worth in a room, by trying all numbers of each. */
function most(widths: readonly number[], values: readonly number[], limits: readonly number[], room: number, from = 0): number {
  if (from === widths.length) return 0;
  let best = 0;
  for (let copies = 0; copies <= limits[from]! && copies * widths[from]! <= room; copies++) {
    const rest = most(widths, values, limits, room - copies * widths[from]!, from + 1);
    best = Math.max(best, copies * values[from]! + rest);
  }
  return best;
}

const work = () => new Work(Infinity);

test('all three ways to fill stock find what trying everything finds', () => {
  const random = seeded(5);
  for (let round = 0; round < 1500; round++) {
    const count = random(1, 7);
    const narrow = random(3, 25);
    const widths = [...new Set(Array.from({ length: count }, () => random(narrow, 60)))].sort((a, b) => b - a);
    const values = widths.map(width => width + random(-30, 12));
    const limits = widths.map(() => random(0, 4));
    const capacities = [100, random(30, 99)];
    const choices = choicesOf(widths, values, limits, 100);
    if (choices.length === 0) continue;
    const ways: Record<string, Fill[]> = {
      table: fillByTable(choices, capacities, widths.length, work()),
      search: fillBySearch(choices, capacities, widths, 1e6, work()),
      few: fillWithFew(choices, capacities, widths.length, work())!,
    };
    const best = capacities.map(room => most(widths, values, limits, room));
    for (const [way, fills] of Object.entries(ways)) {
      const found = fills.map(({ value, upper, counts }, k) => {
        const width = counts.reduce((sum, each, item) => sum + each * widths[item]!, 0);
        const worth = counts.reduce((sum, each, item) => sum + each * values[item]!, 0);
        const isAllowed = width <= capacities[k]! && counts.every((each, item) => each <= limits[item]!);
        return [value, upper, worth, isAllowed];
      });
      expect({ round, way, found }).toEqual({ round, way, found: best.map(value => [value, value, value, true]) });
    }
  }
});
