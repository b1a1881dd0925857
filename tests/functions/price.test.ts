import { called, col, FakeCellError } from '../host/customFunctions';
import { sellPrice } from '../../src/functions/price';

const one = (value: unknown): any[][] => [[value]];
const none = null as never;

describe('SELLPRICE', () => {
  test('rows in, rows out; the price of a 40 % margin is cost ÷ .6', () => {
    expect(called(() => sellPrice(col(60, null, '61.01'), one(0.4), one(0.05), none)).flat()).toEqual([100, '', 101.7]);
    expect(called(() => sellPrice(col(60, 60), col(0.4, 0), none, none)).flat()).toEqual([100, 60]);
  });

  test('steps are exact in decimals: .3 is three steps of .1, and 30 stays 30', () => {
    expect(called(() => sellPrice(col(0.3, 0.1 + 0.2), one(0), one(0.1), none)).flat()).toEqual([0.3, 0.3]);
    expect(called(() => sellPrice(one(21), one(0.3), one(0.1), none))).toEqual([[30]]);
  });

  test('the minimum holds and is rounded up too', () => {
    expect(called(() => sellPrice(one(1), one(0.4), one(5), one(12.5)))).toEqual([[15]]);
  });

  test('errors stay in their row', () => {
    const cells = called(() =>
      sellPrice(col(10, 10, 10, 'x', -1, new FakeCellError('#N/A', 'gone')), col(1, 40, null, 0, 0, 0), none, none),
    );
    expect(cells.flat()).toEqual([
      '#VALUE! margin is 1: a margin is a share of the price and lies below 1; enter 0.4 for 40 %',
      '#VALUE! margin is 40: a margin is a share of the price and lies below 1; enter 0.4 for 40 %',
      '#VALUE! margin is blank: fill it in',
      '#VALUE! cost is "x": enter the cost, like 12.50',
      '#VALUE! cost is -1: it must not be less than 0',
      '#N/A gone',
    ]);
  });

  test('a percentage as text and an inch mark are refused in words that say what to enter', () => {
    expect(called(() => sellPrice(col(30, '30"'), col('40%', 0.4), none, none)).flat()).toEqual([
      '#VALUE! margin is "40%": enter a share of the price, like 0.4 for 40 %',
      '#VALUE! cost is "30"": inch and foot marks belong to lengths; enter the cost without one',
    ]);
  });

  test('one step and one minimum serve all rows', () => {
    expect(called(() => sellPrice(one(1), one(0), one(0), none))).toEqual([['#VALUE! round to is 0: it must be more than 0']]);
    expect(called(() => sellPrice(one(1), one(0), none, col(1, 2)))).toEqual([
      ['#VALUE! minimum came as 2 × 1 cells: one value serves all rows here; give a single cell'],
    ]);
  });
});
