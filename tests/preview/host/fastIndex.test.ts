import { CELL_INVERTED_INDEX_CACHE } from '@univerjs/engine-formula';
import fc from 'fast-check';
import { fastIndex } from '../../../src/preview/host/fastIndex';
import { processorTime } from '../../processorTime';

// The engine exports its one index, not the class.
const InvertedIndexCache = CELL_INVERTED_INDEX_CACHE.constructor as new () => typeof CELL_INVERTED_INDEX_CACHE;

const value = fc.oneof(
  fc.integer({ min: 0, max: 5 }),
  fc.constantFrom('', null, 'Tight', 'TIGHT', '3', ' 3', true, false, '#N/A', NaN),
);
const entry = fc.record({ value, row: fc.integer({ min: 0, max: 6 }), isForced: fc.boolean() });

const content = (index: typeof CELL_INVERTED_INDEX_CACHE) =>
  [...(index.getCellValuePositions('book', 'sheet', 1) ?? [])].map(([key, rows]) => [typeof key, String(key), [...rows].sort()]);

it('holds the same rows for the same values as the engine’s own index, however often a row is entered again', () => {
  fc.assert(
    fc.property(fc.array(entry, { maxLength: 60 }), entries => {
      const [own, fast] = [new InvertedIndexCache(), new InvertedIndexCache()];
      fastIndex(fast as never);
      const entered = new Set<number>();
      for (const { value, row, ...entry } of entries) {
        // The engine enters a row without force only while it first reads a column.
        const isForced = entry.isForced || entered.has(row);
        entered.add(row);
        for (const index of [own, fast]) index.set('book', 'sheet', 1, value as never, row, isForced);
      }
      expect(content(fast)).toEqual(content(own));
    }),
  );
});

it('enters 100,000 rows, and again, within seconds', () => {
  const index = new InvertedIndexCache();
  fastIndex(index as never);
  const spent = processorTime();
  for (let time = 0; time < 2; time++)
    for (let row = 0; row < 100_000; row++) index.set('book', 'sheet', 1, row + time / 2, row, true);
  expect(spent()).toBeLessThan(5000);
});
