import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gaugeAnova, gaugeStudy, type GaugeReading } from '../../../src/core/quality/gaugeStudy';

const study: GaugeReading[] = readFileSync(join(__dirname, '../../cases/gaugeStudy/gauge-study.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map(line => line.replace(/"/g, '').split(','))
  .map(([reading, part, operator]) => ({ reading: Number(reading), part: part!, operator: operator! }));

// AIAG, Measurement Systems Analysis, 4th ed., worked example.
test('sums of squares of the published example', () => {
  const layout = Array.from({ length: 10 }, (_, part) =>
    ['1', '2', '3'].map(operator =>
      study.filter(row => row.part === String(part + 1) && row.operator === operator).map(row => row.reading),
    ),
  );
  const anova = gaugeAnova(layout);
  expect(anova.part.squares).toBeCloseTo(88.3619, 4);
  expect(anova.operator.squares).toBeCloseTo(3.1673, 4);
  expect(anova.interaction.squares).toBeCloseTo(0.359, 4);
  expect(anova.repeatability.squares).toBeCloseTo(2.7589, 4);
});

test('shares and categories of the published example', () => {
  const { sources, distinctCategories } = gaugeStudy(study, 8);
  expect(sources.map(({ source }) => source)).toEqual(['Repeatability', 'Reproducibility', 'Gauge', 'Part', 'Total']);
  const gauge = sources[2]!;
  expect(gauge.shareOfStudy).toBeCloseTo(0.2786, 4);
  expect((1.41 * sources[3]!.shareOfStudy!) / gauge.shareOfStudy!).toBeCloseTo(4.86, 2);
  expect(distinctCategories).toBe(4);
  expect(gauge.shareOfTolerance).toBeCloseTo((6 * Math.sqrt(gauge.variance!)) / 8, 12);
  expect(sources[4]!.shareOfStudy).toBe(1);
});

const rows = (text: string): GaugeReading[] =>
  text
    .trim()
    .split(/\s+/)
    .map(cell => cell.split(':'))
    .map(([part, operator, reading]) => ({ part: part!, operator: operator!, reading: Number(reading) }));

test('an interaction that shows is not pooled but counts as reproducibility', () => {
  const { sources } = gaugeStudy(rows('1:a:10 1:a:10.1 1:b:12 1:b:12.1 2:a:12 2:a:12.1 2:b:10 2:b:10.1'));
  // By hand: repeatability MS = 4·.005/4 = .005, interaction MS = 8, so its component (8 − .005)/2 = 3.9975; parts and operators are alike: clipped to 0.
  expect(sources[0]!.variance).toBeCloseTo(0.005, 12);
  expect(sources[1]!.variance).toBeCloseTo(3.9975, 10);
  expect(sources[3]!.variance).toBe(0);
});

test.each([
  ['1:a:1 1:a:2 1:b:1 2:a:1 2:a:2 2:b:1 2:b:2', 'part 1, operator b has 1 of 2 readings'],
  ['1:a:1 1:a:2 2:b:1 2:b:2', 'part 1, operator b has 0 of 2 readings'],
  ['1:a:1 1:b:2 2:a:1 2:b:2', 'readings of a part by one operator came as 1'],
  ['1:a:1 1:a:2 1:b:1 1:b:2', 'parts came as 1'],
  ['1:a:1 1:a:1 1:b:1 1:b:1 2:a:1 2:a:1 2:b:1 2:b:1', 'readings show no scatter'],
])('%s: says what is missing', (text, message) => {
  expect(() => gaugeStudy(rows(text))).toThrow(message);
});

/**
 * One-way analysis of variance, NIST/SEMATECH e-Handbook 7.4.3.3: SS between 27.897 (df 2), within 17.452 (df 12); published. Three groups of
 * five are three parts measured five times by one person: repeatability 17.452/12, part (27.897/2 − 17.452/12)/5.
 */
test('one operator: repeatability and parts of the one-way analysis, reproducibility open', () => {
  const groups = ['6.9 5.4 5.8 4.6 4.0', '8.3 6.8 7.8 9.2 6.5', '8.0 10.5 8.1 6.9 9.3'];
  const readings = groups.flatMap((group, index) =>
    group.split(' ').map(reading => ({ part: `piece ${index}`, operator: 'Kim', reading: Number(reading) })),
  );
  const { sources, distinctCategories } = gaugeStudy(readings, 10);
  const [repeatability, reproducibility, gauge, part, total] = sources;
  expect(repeatability!.variance).toBeCloseTo(17.452 / 12, 3);
  expect(reproducibility).toEqual({ source: 'Reproducibility' });
  expect(gauge).toEqual({ ...repeatability, source: 'Gauge' });
  expect(part!.variance).toBeCloseTo((27.897 / 2 - 17.452 / 12) / 5, 3);
  expect(total!.variance).toBeCloseTo(17.452 / 12 + (27.897 / 2 - 17.452 / 12) / 5, 3);
  expect(distinctCategories).toBe(1);
});

test('parts that are all alike make one category; a gauge without any variation leaves the number open', () => {
  expect(gaugeStudy(rows('1:a:1 1:a:2 1:b:1 1:b:2 2:a:1 2:a:2 2:b:1 2:b:2')).distinctCategories).toBe(1);
  expect(gaugeStudy(rows('1:a:1 1:a:1 1:b:1 1:b:1 2:a:2 2:a:2 2:b:2 2:b:2')).distinctCategories).toBeUndefined();
});
