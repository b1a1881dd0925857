import { col, FakeCellError, shown } from '../host/customFunctions';
import { cutPlan } from '../../src/functions/cutplan';

const one = (value: unknown): any[][] => [[value]];
const none = null as never;

type Arguments = Partial<
  Record<'lengths' | 'quantities' | 'stock' | 'stockQuantities' | 'kerf' | 'keep' | 'squaring' | 'unit' | 'handling', any[][]>
>;

/** Calls CUTPLAN; an error of the call comes back as its one cell. */
async function planned(given: Arguments): Promise<unknown[][]> {
  const { lengths = none, quantities = none, stock = none, stockQuantities = none, kerf = one(0) } = given;
  try {
    return shown(
      await cutPlan(
        lengths,
        quantities,
        stock,
        stockQuantities,
        kerf,
        given.keep ?? none,
        given.squaring ?? none,
        none,
        given.unit ?? none,
        given.handling ?? none,
      ),
    );
  } catch (error) {
    if (error instanceof FakeCellError) return shown([[error]]);
    throw error;
  }
}

const header = ['Stock', 'Times', 'Cuts', 'Used', 'Left'];

describe('CUTPLAN', () => {
  test('gives rows and cuts longest first, used and left per piece of stock, and a total over all', async () => {
    const plan = await planned({ lengths: col(840, 1250), quantities: col(4, 6), stock: one(5500), kerf: one(3) });
    expect(plan).toEqual([header, [5500, 2, '3 x 1250 + 2 x 840', 5445, 55], ['Total', 2, 'proven best', 10890, 110]]);
  });

  test('the last piece needs no kerf behind it: what is left is never below 0', async () => {
    const exact = { lengths: one(1000), quantities: one(2), stock: one(2003), kerf: one(3) };
    expect(await planned(exact)).toEqual([header, [2003, 1, '2 x 1000', 2003, 0], ['Total', 1, 'proven best', 2003, 0]]);
    expect(await planned({ ...exact, squaring: one(1) })).toEqual([
      header,
      [2003, 2, '1 x 1000', 1003, 999],
      ['Total', 2, 'proven best', 2006, 1998],
    ]);
  });

  test('with keep, offcuts that just serve go before a reel; without, the least stock wins (by hand)', async () => {
    const rack = { lengths: one(900), quantities: one(2), stock: col(1850, 950), stockQuantities: col(1, 2) };
    // Worth above 100: 850 + 850 = 1700 of the offcuts, 1750 of the reel. As a whole: 1900 or 1850 of stock.
    expect(await planned({ ...rack, keep: one(100) })).toEqual([
      header,
      [950, 2, '1 x 900', 900, 50],
      ['Total', 2, 'proven best', 1800, 100],
    ]);
    expect(await planned(rack)).toEqual([header, [1850, 1, '2 x 900', 1800, 50], ['Total', 1, 'proven best', 1800, 50]]);
  });

  test.each([
    // Worth above 500: two offcuts lose 900 + 2 × handling, the reel 1800 + 1 × handling; they are even at 900.
    ['offcuts', 899, 500, [950, 2, '1 x 900', 900, 50]],
    ['one reel', 901, 500, [10000, 1, '2 x 900', 1800, 8200]],
    // As a whole: 1900 + 2 × handling or 10000 + 1 × handling of stock; even at 8100.
    ['offcuts', 8099, undefined, [950, 2, '1 x 900', 900, 50]],
    ['one reel', 8101, undefined, [10000, 1, '2 x 900', 1800, 8200]],
  ])('handling counts once a piece of stock: %s at %f, keep %p (by hand)', async (_, handling, keep, row) => {
    const rack = { lengths: one(900), quantities: one(2), stock: col(10000, 950), stockQuantities: col(1, 2) };
    const plan = await planned({ ...rack, handling: one(handling), keep: keep === undefined ? none : one(keep) });
    expect(plan[1]).toEqual(row);
    expect(plan[2]).toEqual(['Total', row[1], 'proven best', 1800, row[1] === 1 ? 8200 : 100]);
  });

  test('skips blank rows; a blank stock quantity is unlimited', async () => {
    const plan = await planned({
      lengths: col(500, null, '', 400),
      quantities: col(2, null, ' ', 1),
      stock: col(1000, null),
      stockQuantities: col(null, null),
    });
    expect(plan.slice(1)).toEqual([
      [1000, 1, '2 x 500', 1000, 0],
      [1000, 1, '1 x 400', 400, 600],
      ['Total', 2, 'proven best', 1400, 600],
    ]);
  });

  test('works in 1/64 in and writes fractions as they were typed', async () => {
    const plan = await planned({
      lengths: col('41 3/8', 20.5),
      quantities: col(2, 1),
      stock: one(120),
      kerf: one('1/8'),
      unit: one('in'),
    });
    expect(plan.slice(1)).toEqual([
      [120, 1, '2 x 41 3/8 + 1 x 20.5', 103.625, 16.375],
      ['Total', 1, 'proven best', 103.625, 16.375],
    ]);
  });

  test.each<[string, Arguments, string]>([
    [
      'not enough stock: which lengths and how much',
      { lengths: one(1000), quantities: one(10), stock: one(5000), stockQuantities: one(1) },
      '#VALUE! stock is short of 5 x 1000: 5000 mm with kerf are missing; add stock or cut fewer',
    ],
    [
      'a piece longer than every stock',
      { lengths: col(1000, 7000), quantities: col(1, 2), stock: one(6000) },
      '#VALUE! piece 2 x 7000 is longer than every stock: the longest stock is 6000 mm; add longer stock or check the length',
    ],
    [
      'a quantity that is not whole',
      { lengths: one(1000), quantities: one(1.5), stock: one(6000) },
      '#VALUE! quantity in row 1 is 1.5: enter a whole number',
    ],
    [
      'a blank quantity beside a length',
      { lengths: col(1000, 900), quantities: col(2, ''), stock: one(6000) },
      '#VALUE! quantity in row 2 is blank: fill it in, or clear the row',
    ],
    [
      'a blank kerf',
      { lengths: one(1000), quantities: one(1), stock: one(6000), kerf: none },
      '#VALUE! kerf is blank: fill it in',
    ],
    [
      'a handling below 0',
      { lengths: one(1000), quantities: one(1), stock: one(6000), handling: one(-1) },
      '#VALUE! handling is -1: it must not be less than 0',
    ],
    [
      'an unknown unit',
      { lengths: one(1000), quantities: one(1), stock: one(6000), unit: one('cm') },
      '#VALUE! unit is "cm": enter "mm" or "in"',
    ],
    [
      'an error value that came in',
      { lengths: one(new FakeCellError('#DIV/0!', 'x')), quantities: one(1), stock: one(6000) },
      '#DIV/0! x',
    ],
    [
      'nothing to cut',
      { lengths: one(''), quantities: one(''), stock: one(6000) },
      '#VALUE! lengths have nothing to cut: fill in lengths and quantities',
    ],
  ])('%s is an error that says what to do', async (_, given, sentence) => {
    expect(await planned(given)).toEqual([[sentence]]);
  });

  test('a canceled call still ends, with an honest verdict', async () => {
    const invocation = { onCanceled: () => {} } as CustomFunctions.CancelableInvocation;
    const running = cutPlan(col(310, 270, 190), col(7, 9, 11), one(1000), none, one(3), none, none, none, none, none, invocation);
    invocation.onCanceled!();
    const plan = await running;
    expect(plan[plan.length - 1]![2]).toMatch(/^(proven best|at most [\d.]+ % over the best)$/);
  });
});
