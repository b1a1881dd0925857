import { findThread } from '../../src/functions/threads';
import { called } from '../host/customFunctions';

const one = (value: unknown): any[][] => [[value]];
const find = (diameter: unknown, pitch: unknown, unit: unknown, side: unknown = null) =>
  called(() => findThread(one(diameter), one(pitch), one(unit), one(side)));
const names = (...call: Parameters<typeof find>) =>
  find(...call)
    .slice(1)
    .map(row => row[0]);
const close = (value: number) => expect.closeTo(value, 6);

describe('FINDTHREAD', () => {
  // ISO 228-1 (33.249) and ASME B1.1 (1.3125 in = 33.3375 mm), from memory: 0.09 apart, which a caliper does not part.
  test('33.3 mm: the nearest first, with what it is off by', () => {
    const rows = find(33.3, null, 'mm');
    expect(rows[0]).toEqual(['Thread', 'Standard', 'Diameter', 'Pitch', 'Off by', 'Used with']);
    expect(rows[1]).toEqual(['1 5/16-12', 'ASME B1.1', 33.3375, close(25.4 / 12), -0.0375, '37° flare swivel DN 25']);
    expect(rows[2]).toEqual(['G 1', 'ISO 228-1', 33.249, close(25.4 / 11), 0.051, '60° cone DN 25']);
    expect(rows.slice(3).map(row => row[0])).toEqual(['R 1', '1-11.5 NPT', 'M33x2']);
  });

  test('the pitch parts what the diameter does not', () => {
    expect(names(33.3, 2.31, 'mm')).toEqual(['G 1', 'R 1']);
    expect(names(33.3, 2.1167, 'mm')).toEqual(['1 5/16-12']);
    expect(names(1.311, 12, 'in')).toEqual(['1 5/16-12']);
  });

  test('30.0 and 2.0: M30x2, of two sizes of the 24° cone', () => {
    expect(find(30, 2, 'mm').slice(1)).toEqual([
      ['M30x2', 'ISO 261', 30, 2, 0, '24° cone L, light DN 19; 24° cone S, heavy DN 16'],
    ]);
  });

  test('inches: diameters in inches, pitches in threads per inch', () => {
    expect(find('3/4', 16, 'in').slice(1)).toEqual([['3/4-16', 'ASME B1.1', 0.75, 16, 0, '37° flare swivel DN 12']]);
    const [metric] = find(1.181, 12.7, 'in').slice(1);
    expect(metric).toEqual([
      'M30x2',
      'ISO 261',
      close(30 / 25.4),
      12.7,
      close(1.181 - 30 / 25.4),
      expect.stringMatching(/DN 19/),
    ]);
  });

  // Inside = outside − 1.0825 pitches (60°) or − 1.2807 pitches (55°): M30x2 27.835; G 1/2 20.955 − 1.2807 × 25.4/14 = 18.6314; arithmetic of the form.
  test('female: inside diameters', () => {
    expect(find(27.9, 2, 'mm', 'female')[1]).toEqual(['M30x2', 'ISO 261', 27.835, 2, 0.065, expect.any(String)]);
    expect(find(18.6, 1.814, 'mm', 'Female')[1]).toEqual([
      'G 1/2',
      'ISO 228-1',
      close(20.955 - (1.2807 * 25.4) / 14),
      close(25.4 / 14),
      close(18.6 - 20.955 + (1.2807 * 25.4) / 14),
      '60° cone DN 12',
    ]);
  });

  test('exactly 0.6 mm and exactly 4 % still agree', () => {
    expect(names(12.6, null, 'mm')).toContain('M12x1.5');
    expect(names(12.6001, null, 'mm')).not.toContain('M12x1.5');
    expect(names(12, 1.56, 'mm')).toContain('M12x1.5');
    expect(names(12, 1.5601, 'mm')).not.toContain('M12x1.5');
    expect(names(0.75, 15.36, 'in')).toContain('3/4-16');
    expect(names(0.75, 15.359, 'in')).not.toContain('3/4-16');
  });

  test.each<[unknown[], string]>([
    [[100, null, 'mm'], '#N/A no male thread within 0.6 mm of 100 mm: check unit and side, and measure again at a full thread'],
    [
      [30, 1, 'mm', 'female'],
      '#N/A no female thread within 0.6 mm of 30 mm, pitch 1 mm: check unit and side, and measure again at a full thread',
    ],
    [
      [1, 30, 'in'],
      '#N/A no male thread within 0.6 mm of 1 in, 30 threads per inch: check unit and side, and measure again at a full thread',
    ],
    [[null, 2, 'mm'], '#VALUE! diameter is blank: fill it in'],
    [[0, 2, 'mm'], '#VALUE! diameter is blank or zero: fill it in'],
    [[30, 2, null], '#VALUE! unit is blank: fill it in'],
    [[30, 2, 'cm'], '#VALUE! unit is "cm": enter "mm" or "in"'],
    [[30, 2, 'mm', 'both'], '#VALUE! side is "both": enter "male" or "female"'],
    [
      ['1 1/8"', null, 'mm'],
      '#VALUE! diameter is "1 1/8"": that is in inches, but this call is in mm; use one unit for all lengths',
    ],
    [
      [45_000, null, 'mm'],
      '#VALUE! diameter is 45000: that looks like a date; format the cell as text and type the fraction again',
    ],
  ])('%j: %s', (call, sentence) => {
    const found = called(() => findThread(...(call.map(one) as [any, any, any, any?])));
    expect(found).toEqual([[sentence]]);
  });
});
