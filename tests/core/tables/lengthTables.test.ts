import { din20066Lengths } from '../../../src/core/tables/din20066Lengths';
import { saeJ517Lengths } from '../../../src/core/tables/saeJ517Lengths';

test('DIN 20066 has five rising bands, the last without end, and never allows less over than under', () => {
  const ends: number[] = din20066Lengths.map(({ upToMm }) => upToMm);
  expect(ends).toEqual([630, 1250, 2500, 8000, Infinity]);
  for (const { over, under } of din20066Lengths)
    over.forEach((value, index) => expect(Number(value)).toBeGreaterThan(Number(under[index])));
});

test('SAE J517 has three rising bands with rising deviations', () => {
  expect(saeJ517Lengths.map(({ upToIn }) => upToIn)).toEqual([12, 18, 36]);
  expect(saeJ517Lengths.map(({ plusMinusIn }) => Number(plusMinusIn))).toEqual([1 / 8, 3 / 16, 1 / 4]);
});
