import { gaugeCheck, gaugeStudy } from '../../src/functions/gauges';
import { called, col, FakeCellError } from '../host/customFunctions';

const one = (value: unknown): any[][] => [[value]];
const close = (value: number) => expect.closeTo(value, 9);

/** Ten readings of mean 25.006 and standard deviation 0.012: 25.006 ± 0.012·√0.9, so that s = √(10·0.9/9)·0.012. */
const shift = 0.012 * Math.sqrt(0.9);
const readings = Array.from({ length: 10 }, (_, index) => 25.006 + (index % 2 ? shift : -shift));

describe('GAUGECHECK', () => {
  const check = (cells: any[][], reference: unknown = 25, tolerance: unknown = 0.24) =>
    called(() => gaugeCheck(cells, one(reference), one(tolerance)));

  // T .24, s .012, bias .006: Cg .6667, Cgk .5; form of ISO 22514-7, from memory, computed.
  test('bias, s, Cg and Cgk in one row, from a column, a row or a block', () => {
    const expected = [[close(0.006), close(0.012), close(2 / 3), close(0.5)]];
    expect(check(col(...readings))).toEqual(expected);
    expect(check([readings])).toEqual(expected);
    expect(check([readings.slice(0, 5), readings.slice(5)])).toEqual(expected);
  });

  test('a gauge that reads low has a negative bias; Cgk takes its size', () => {
    expect(check(col(...readings), 25.012)[0]).toEqual([close(-0.006), close(0.012), close(2 / 3), close(0.5)]);
    expect(check(col(...readings), 24.95)[0]![3]).toBeLessThan(0);
  });

  test('blank cells, and rows that a host delivers as zeros, are passed over', () => {
    const plain = check(col(...readings));
    expect(check(col(null, ...readings, 0, ''))).toEqual(plain);
    expect(check([[...readings.slice(0, 6)], [...readings.slice(6), null, null]])).toEqual(plain);
  });

  test.each<[any[][], unknown, unknown, string]>([
    [col(...readings.slice(1)), 25, 0.24, '#VALUE! readings came as 9: take ten or more of the same reference piece'],
    [col(null), 25, 0.24, '#VALUE! readings came as 0: take ten or more of the same reference piece'],
    [
      col(...Array<number>(10).fill(25)),
      25,
      0.24,
      '#VALUE! readings show no scatter: read the gauge to a finer digit, and lift it off each time',
    ],
    [[[...readings, 0]], 25, 0.24, '#VALUE! reading in row 1 is blank or zero: take the reading again, or clear the cell'],
    [col(...readings, 'x'), 25, 0.24, '#VALUE! reading in row 11 is "x": enter the caliper reading, like 12.5, 3/8 or 1 1/2'],
    [col(...readings, new FakeCellError('#DIV/0!', 'sent')), 25, 0.24, '#DIV/0! sent'],
    [col(...readings), null, 0.24, '#VALUE! reference is blank: fill it in'],
    [col(...readings), 25, 0, '#VALUE! tolerance is blank or zero: fill it in'],
    [
      col(...readings),
      25,
      '±0.12',
      '#VALUE! tolerance is "±0.12": enter the full width of the tolerance, like 12.5, 3/8 or 1 1/2',
    ],
  ])('%j: says what to do', (cells, reference, tolerance, sentence) => {
    expect(check(cells, reference, tolerance)).toEqual([[sentence]]);
  });
});

test('GAUGESTUDY by one person: the row Reproducibility is blank', () => {
  // By hand: means 1.5 and 6 of two readings each: MS between 2 × 10.125 = 20.25, within 1/2 = .5; part (20.25 − .5)/2 = 9.875.
  const rows = called(() => gaugeStudy(col(1, 1, 2, 2), col('Kim', 'kim', 'Kim', 'Kim'), col(1, 2, 5.5, 6.5), one(10)));
  expect(rows).toEqual([
    ['Source', 'Variance', 'Share of study', 'Share of tolerance'],
    ['Repeatability', close(0.5), close(Math.sqrt(0.5 / 10.375)), close((6 * Math.sqrt(0.5)) / 10)],
    ['Reproducibility', '', '', ''],
    ['Gauge', close(0.5), close(Math.sqrt(0.5 / 10.375)), close((6 * Math.sqrt(0.5)) / 10)],
    ['Part', close(9.875), close(Math.sqrt(9.875 / 10.375)), close((6 * Math.sqrt(9.875)) / 10)],
    ['Total', close(10.375), 1, close((6 * Math.sqrt(10.375)) / 10)],
    ['Distinct categories', 6, '', ''],
  ]);
});
