import { FRESH_DUTY } from '../../../src/sheets/duty/dutyFields';
import { foldOfMistake, foldSummary } from '../../../src/sheets/duty/dutySummary';
import { LIFT } from './duties';

test('a folded part of the form says in a line what is in it, and nothing where it is blank', () => {
  const folds = ['flow', 'extremes', 'route', 'ends'] as const;
  expect(folds.map(fold => foldSummary(fold, FRESH_DUTY))).toEqual(['', '', '', '']);
  expect(folds.map(fold => foldSummary(fold, LIFT))).toEqual([
    '60 L/min, at most 5.5 m/s, ISO VG 46',
    'surge 210 bar, air from -20 °C, air up to 40 °C',
    '3 parts, slack 6 %',
    'A: 24° cone L, 90°, B: 24° cone L, 4 assemblies',
  ]);
  expect(foldSummary('extremes', { ...FRESH_DUTY, vacuum: 'yes' })).toBe('vacuum');
});

test('a mistake is in a part that folds, or among the fields that are always shown', () => {
  expect(['route 2 radius', 'twist', 'surge', 'bore'].map(foldOfMistake)).toEqual(['route', 'ends', 'extremes', undefined]);
});
