import { pageScale } from '../../../src/sheets/print/pageScale';

// A4 is 210 × 297 mm (ISO 216), Letter 8 1/2 × 11 in; a point is 1/72 in.
test('all columns fit on A4 and on Letter, upright and lying', () => {
  const paper = { portrait: [(210 / 25.4) * 72, 8.5 * 72], landscape: [(297 / 25.4) * 72, 11 * 72] } as const;
  for (const orientation of ['portrait', 'landscape'] as const) {
    for (const columns of [3, 11, 20]) {
      const widths = new Array<number>(columns).fill(64);
      const scale = pageScale(widths, orientation, 28);
      expect((columns * 64 * scale) / 100).toBeLessThanOrEqual(Math.min(...paper[orientation]) - 2 * 28);
    }
  }
});

test('what fits anyway is not enlarged', () => expect(pageScale([100, 100], 'portrait', 28)).toBe(100));
