import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { readXlsx } from '../../../src/preview/xlsx/readXlsx';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { orderOfWork, type OrderOfWork, type OrderOptions } from '../../../src/sheets/week/orderOfWork';
import { dialStops } from '../../../src/sheets/week/dialStops';
import { orderSentence } from '../../../src/sheets/week/weekText';
import type { WorkEnd, WorkLine } from '../../../src/sheets/week/workEnd';
import { workLines } from '../../../src/sheets/week/workLines';
import { blockOf } from '../../../src/workbook/a1';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const SHARE = new Decimal('0.5');
const options = (more: Partial<OrderOptions> = {}): OrderOptions => ({
  inMachine: () => ({ die: '', dial: '' }),
  share: SHARE,
  step: () => undefined,
  ...more,
});

const end = (which: 'A' | 'B', die: string, dial: number, target = 20 + dial / 10, tolerance = 0.1): WorkEnd => ({
  end: which,
  die,
  dial: new Decimal(dial),
  target: new Decimal(target),
  tolerance: new Decimal(tolerance),
});
const line = (row: number, hose: string, ends: readonly WorkEnd[], machine = ''): WorkLine => ({
  row,
  line: `${row}`,
  label: '',
  hose,
  quantity: 1,
  machine,
  ends,
});
const message = ({ groups }: OrderOfWork) =>
  groups.map(
    ({ die, dial, items }) => `${die} ${dial}: ${items.map(({ line: own, ends }) => `${own.line}${ends.join('')}`).join(' ')}`,
  );

describe('the order', () => {
  test('every end that goes through a die is crimped while it is in: a line with two dies comes up twice', () => {
    const week = [
      line(1, 'Larch', [end('A', 'D26', 300), end('B', 'D30', 310)]),
      line(2, 'Larch', [end('A', 'D30', 310), end('B', 'D26', 300)]),
    ];
    const order = orderOfWork(week, options());
    expect(message(order)).toEqual(['D26 300: 1A 2B', 'D30 310: 1B 2A']);
    expect(order.counts).toEqual({ dieLoads: 2, dieChanges: 1, dialChanges: 1 });
    // D26, D30 | D30, D26.
    expect(order.inSheetOrder).toEqual({ dieLoads: 3, dieChanges: 2, dialChanges: 2 });
    expect(order.rows).toEqual([1, 2]);
  });

  test('the die in the machine comes first and need not be loaded', () => {
    const week = [line(1, 'L', [end('A', 'D26', 300)]), line(2, 'L', [end('A', 'D30', 310)])];
    const order = orderOfWork(week, options({ inMachine: () => ({ die: 'd30', dial: '310' }) }));
    expect(message(order)).toEqual(['D30 310: 2A', 'D26 300: 1A']);
    expect(order.counts).toEqual({ dieLoads: 1, dieChanges: 1, dialChanges: 1 });
  });

  test('a dial that two dies share is left as it is', () => {
    const week = [
      line(1, 'L', [end('A', 'D26', 300)]),
      line(2, 'L', [end('A', 'D30', 310)]),
      line(3, 'L', [end('A', 'D39', 300)]),
      line(4, 'L', [end('A', 'D26', 320)]),
    ];
    const order = orderOfWork(week, options());
    expect(order.counts).toEqual({ dieLoads: 3, dieChanges: 2, dialChanges: 2 });
    const dies = message(order).map(text => text.slice(0, 7));
    expect(Math.abs(dies.indexOf('D26 300') - dies.indexOf('D39 300'))).toBe(1);
  });

  test('within a setting hose by hose, and each crimper apart', () => {
    const week = [
      line(1, 'Larch', [end('A', 'D26', 300)]),
      line(2, 'Rowan', [end('A', 'D26', 300)]),
      line(3, 'Larch', [end('A', 'D26', 300)]),
      line(4, 'Larch', [end('A', 'D26', 300)], 'Small crimper'),
    ];
    expect(message(orderOfWork(week, options()))).toEqual(['D26 300: 1A 3A 2A', 'D26 300: 4A']);
  });

  test('plain hose needs no die; a line without one is named', () => {
    const week = [line(1, 'L', []), line(2, 'L', [end('A', '', 300)]), line(3, 'L', [end('A', 'D26', 300)])];
    const order = orderOfWork(week, options());
    expect(order.unknown.map(({ row }) => row)).toEqual([2]);
    expect(order.rows).toEqual([3, 1, 2]);
  });
});

describe('one dial for both ends', () => {
  const both = (dialB: number, targetB: number) =>
    orderOfWork([line(1, 'Larch', [end('A', 'D26', 300, 27.35, 0.12), end('B', 'D26', dialB, targetB, 0.12)])], options());

  test('two dials a digit apart, 0.016 mm against ± 0.12: one dial, and it says what that costs', () => {
    const order = both(301, 27.334);
    expect(message(order)).toEqual(['D26 301: 1AB']);
    expect(order.groups[0]!.items[0]!.oneDial).toBe(
      'one dial for both ends, 301 for 300 and 301: A −0.016 from its target (± 0.12), B on its target (± 0.12)',
    );
  });

  test('targets a whole tolerance apart meet half way; more stay apart', () => {
    // 8 digits, 0.12 mm: half way each end is 0.06 off, half its tolerance.
    expect(message(both(308, 27.23))).toEqual(['D26 304: 1AB']);
    expect(both(308, 27.2).groups).toHaveLength(2);
  });

  test('the step of the machine counts where it is known', () => {
    const ends = [end('A', 'D26', 300, 27.35, 0.12), end('B', 'D26', 304, 27.3, 0.12)];
    const with0 = (step: string) => message(orderOfWork([line(1, 'L', ends)], options({ step: () => new Decimal(step) })));
    expect(with0('0.02')).toEqual(['D26 302: 1AB']);
    // 4 digits of 0.05 mm: half way 0.1 off, more than half of 0.12.
    expect(with0('0.05')).toEqual(['D26 300: 1A', 'D26 304: 1B']);
  });

  test('a window takes a dial that another line needs anyway', () => {
    const week = [
      line(1, 'L', [end('A', 'D26', 300, 27.35, 0.12), end('B', 'D26', 304, 27.29, 0.12)]),
      line(2, 'L', [end('A', 'D26', 304, 27.29, 0.12)]),
    ];
    expect(message(orderOfWork(week, options()))).toEqual(['D26 304: 1AB 2A']);
  });
});

/** The fewest dials that serve all windows, by trying all sets of dials. */
function fewestDials(windows: readonly (readonly [number, number])[]): number {
  const dials = [...new Set(windows.flat())];
  const serves = (set: readonly number[]) => windows.every(([low, high]) => set.some(dial => dial >= low && dial <= high));
  let best = dials.length;
  for (let mask = 0; mask < 1 << dials.length; mask += 1) {
    const set = dials.filter((_, index) => mask & (1 << index));
    if (set.length < best && serves(set)) best = set.length;
  }
  return best;
}

test('windows of dials are served by the fewest dials: compared with all sets of dials', () => {
  const window = fc
    .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 5 }))
    .map(([low, wide]) => [low, low + wide] as const);
  fc.assert(
    fc.property(fc.array(window, { minLength: 1, maxLength: 5 }), windows => {
      const stops = dialStops(
        windows.map(([low, high]) => ({ low: new Decimal(low), high: new Decimal(high), best: new Decimal((low + high) / 2) })),
      );
      stops.forEach((dial, index) => {
        expect(dial.gte(windows[index]![0]) && dial.lte(windows[index]![1])).toBe(true);
      });
      const count = new Set(stops.map(String)).size;
      // Windows of one dial are fixed: a set that leaves them out serves nobody.
      expect(count).toBe(fewestDials(windows));
    }),
    { numRuns: 300 },
  );
});

type Crimp = readonly [die: string, dial: string];
const changesOf = (order: readonly Crimp[]) => ({
  dies: order.filter(([die], index) => index > 0 && order[index - 1]![0] !== die).length,
  dials: order.filter(([, dial], index) => index > 0 && order[index - 1]![1] !== dial).length,
});
function* permutations<T>(items: readonly T[]): Generator<readonly T[]> {
  if (items.length <= 1) yield items;
  for (const [index, item] of items.entries()) {
    for (const rest of permutations([...items.slice(0, index), ...items.slice(index + 1)])) yield [item, ...rest];
  }
}
/** Fewest die changes, then fewest dial changes, over all orders of the settings. */
function bestByExhaustion(settings: readonly Crimp[]) {
  let best = { dies: Infinity, dials: Infinity };
  for (const order of permutations(settings)) {
    const own = changesOf(order);
    if (own.dies < best.dies || (own.dies === best.dies && own.dials < best.dials)) best = own;
  }
  return best;
}

test('no order of the settings is better: compared with all orders', () => {
  const crimp = fc.tuple(fc.constantFrom('D1', 'D2', 'D3', 'D4'), fc.integer({ min: 1, max: 4 }));
  fc.assert(
    fc.property(fc.uniqueArray(crimp, { minLength: 1, maxLength: 6, selector: String }), crimps => {
      const week = crimps.map(([die, dial], row) => line(row + 1, 'L', [end('A', die, dial)]));
      const { counts, isBest } = orderOfWork(week, options());
      expect(isBest).toBe(true);
      expect({ dies: counts.dieChanges, dials: counts.dialChanges }).toEqual(
        bestByExhaustion(crimps.map(([die, dial]) => [die, `${dial}`])),
      );
    }),
    { numRuns: 150 },
  );
});

test('beyond twelve dies each die is still loaded once, and it does not claim to be the best', () => {
  const week = Array.from({ length: 30 }, (_, n) => line(n + 1, 'L', [end('A', `D${n % 15}`, n % 7)]));
  const order = orderOfWork(week, options());
  expect(order.counts.dieLoads).toBe(15);
  expect(order.isBest).toBe(false);
});

describe('the sample week', () => {
  const read = async () => {
    const { cells } = await readXlsx(new Uint8Array(readFileSync(join(__dirname, '../../../samples/catalogue.xlsx'))));
    const sheets: Record<string, FakeCell[][]> = {};
    for (const { sheet, address, formula, cached } of cells) {
      const { row, column } = blockOf(address)!;
      const rows = (sheets[sheet] ??= []);
      while (rows.length <= row) rows.push([]);
      while (rows[row]!.length <= column) rows[row]!.push('');
      rows[row]![column] = formula ? { formula, value: cached } : cached;
    }
    const { workbook } = fakeWorkbook(sheets, { sheet: 'Week', address: 'A6' });
    return readJobs(workbook, { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } });
  };

  test('the fewest die changes that any order of its settings has', async () => {
    const lines = workLines(await read(), '');
    const order = orderOfWork(lines, options());
    const dies = new Set(lines.flatMap(({ ends }) => ends.map(({ die }) => die)));
    // Each die has to be put in once: one change fewer than there are dies cannot be beaten, and all orders of the dies confirm it.
    const byExhaustion = bestByExhaustion([...dies].map(die => [die, die]));
    expect(order.counts.dieChanges).toBe(byExhaustion.dies);
    expect(order.counts.dieChanges).toBe(dies.size - 1);
    expect(order.inSheetOrder.dieChanges).toBeGreaterThan(order.counts.dieChanges);
    expect([dies.size, order.inSheetOrder.dieChanges, order.counts.dieChanges]).toMatchInlineSnapshot(`
     [
       4,
       7,
       3,
     ]
    `);
    expect(orderSentence(order)).toMatchInlineSnapshot(
      `"4 dies: 3 die changes and 4 dial changes; in the order of the sheet 7 die changes and 7 dial changes. Fewer are not possible with these dials."`,
    );
  });
});
