import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { argumentsOf, expectCells } from '../functions/formulaText';
import { excelCall } from './excelCall';

/* Check values from outside the project, asked of the built script as a spreadsheet asks. Memory: recalled, not seen. */

test.each([
  ['CUTLENGTH', '16.5, 0.94, 0.94', '14.62', 'NAVEDTRA 14018, table 5-2, factor method'],
  ['ROUTELENGTH', '50.8, 180, 180, 22', '650.844', 'SAE J343:2016, test free length of a 180° bend, r 180, d 22'],
  ['LENGTHCHANGE', '1000', '960 and 1020', '+2 % published, −4 % memory'],
  ['LENGTHLIMITS', '630, 25.4, "mm"', '627 and 637', 'DIN 20066, memory: +7/−3 to 630 mm, DN 25'],
  ['LENGTHLIMITS', '630, 50.8, "mm"', '626 and 642', 'DIN 20066, memory: +12/−4 to 630 mm, DN 50'],
  ['LENGTHLIMITS', '1250, 25.4, "mm"', '1246 and 1262', 'DIN 20066, memory: +12/−4 to 1250 mm'],
  ['LENGTHLIMITS', '1250, 31.8, "mm"', '1244 and 1270', 'DIN 20066, memory: +20/−6 to 1250 mm, DN 32'],
  ['LENGTHLIMITS', '2500, 12.7, "mm"', '2494 and 2520', 'DIN 20066, memory: +20/−6 to 2500 mm'],
  ['LENGTHLIMITS', '2500, 38.1, "mm"', '2494 and 2525', 'DIN 20066, memory: +25/−6 to 2500 mm, DN 40'],
  ['LENGTHLIMITS', '8000, 12.7, "mm"', '7960 and 8120', 'DIN 20066, memory: +1.5/−.5 % to 8000 mm'],
  ['LENGTHLIMITS', '10000, 12.7, "mm"', '9900 and 10300', 'DIN 20066, memory: +3/−1 % above 8000 mm'],
  ['LENGTHLIMITS', '12, 0.5, "in"', '11.875 and 12.125', 'SAE J517, memory: ±1/8 to 12 in'],
  ['LENGTHLIMITS', '18, 0.5, "in"', '17.8125 and 18.1875', 'SAE J517, memory: ±3/16 to 18 in'],
  ['LENGTHLIMITS', '36, 0.5, "in"', '35.75 and 36.25', 'SAE J517, memory: ±1/4 to 36 in'],
  ['LENGTHLIMITS', '70, 0.5, "in"', '69.25 and 70.75', 'SAE J517, memory: ±1 % above, .7 in to the nearest 1/8 is .75'],
  ['CRIMPCHECK', '{1.005,1.005,1.005,1.005}, 1, 0.005', 'IN SPEC', '±.005 in, common practice'],
  ['CRIMPCHECK', '{0.994,0.995,0.995,0.995}, 1, 0.005', 'TIGHT', 'mean too small is too tight, common practice'],
  ['CRIMPCHECK', '{1.006,1.005,1.005,1.005}, 1, 0.005', 'LOOSE', 'mean too large is too loose, common practice'],
  ['NEXTDIAL', '300, {1.01,1.01,1.01,1.01}, 1, 0.005, 0.005', '302', '.005 in a digit, too loose: raise it, common practice'],
  ['NEXTDIAL', '300, {0.99,0.99,0.99,0.99}, 1, 0.005, 0.005', '298', 'too tight: lower it, common practice'],
  ['CONFORMITY', '9.8, 9.5, 0.5, 0.2', '0.977250', 'JCGM 106 form, computed'],
  // Ten readings whose mean is .006 above 25 and whose s is .012: ± .012·√.9 = .011384199577 about 25.006.
  [
    'GAUGECHECK',
    '{25.017384199577,24.994615800423,25.017384199577,24.994615800423,25.017384199577,24.994615800423,25.017384199577,24.994615800423,25.017384199577,24.994615800423}, 25, 0.24',
    '0.006, 0.012, 0.6667, 0.5',
    'form of ISO 22514-7, memory: T .24, s .012, bias .006',
  ],
  [
    'FINDTHREAD',
    '20.955, "", "mm"',
    'Thread, Standard, Diameter, Pitch, Off by, Used with, G 1/2, ISO 228-1, 20.955, 1.8143, 0',
    'ISO 228-1, memory: G 1/2 is 20.955 mm, 14 threads per inch',
  ],
  [
    'FINDTHREAD',
    '27.835, 2, "mm", "female"',
    'Thread, Standard, Diameter, Pitch, Off by, Used with, M30x2, ISO 261, 27.835, 2, 0',
    'arithmetic of the 60° form: 30 − 1.0825 × 2',
  ],
  ['VELOCITY', '12000, 200, "metric"', '6.37', 'White, Fluid Mechanics, example 6.7: .2 m³/s through 200 mm'],
  // 117.352 m of oil × 900 kg/m³ × 9.81 m/s².
  ['PRESSUREDROP', '12000, 200, 500, 10, "metric", 900, 0.26', '10.361', 'White, Fluid Mechanics, example 6.7, computed'],
  // Re 1e5 in 100 mm at 10 m/s: f · 10 · 1000 · 10²/2 Pa = 5 f bar.
  [
    'PRESSUREDROP',
    '4712.38898038469, 100, 1, 10, "metric", 1000, 0.01',
    '0.0925693304',
    'Colebrook, relative roughness 1e-4: .01851386607747',
  ],
  ['PRESSUREDROP', '4712.38898038469, 100, 1, 10, "metric", 1000', '0.0899488654', 'Colebrook, smooth: .01798977308427'],
  ['VISCOSITY', '46, {100;20;60;40}, "metric"', '6.7604, 134.49, 20.562, 46', 'ASTM D341 and D2270, computed; ISO 3448 at 40 °C'],
  ['SELLPRICE', '60, 0.4', '100', '40 % margin is 66.667 % markup'],
  ['SELLPRICE', '60, 0.333333333333333', '90.000', '50 % markup is 33.333 % margin'],
  ['RUNSIGNALS', '{10.25;10;10.25;10.31}, 10, 0.1', ', , 2, 1 2', 'Western Electric rules 1 and 2, e-Handbook 6.3.2'],
  [
    'RUNSIGNALS',
    '{9.88;9.88;10;9.88;9.88}, 10, 0.1',
    ', , , , 3',
    'Western Electric rule 3: four of five beyond 1 sigma, one side',
  ],
  [
    'RUNSIGNALS',
    '{10.1;10.1;10.1;10.1;10.1;10.1;10.1;10.1}, 10, 0.1',
    ', , , , , , , 4',
    'Western Electric rule 4: eight on one side',
  ],
])('%s(%s) gives %s (%s)', async (id, args, message) => {
  expectCells((await excelCall(id, ...argumentsOf(args))).flat(), message);
});

// ISO 7870-2, e-Handbook 6.3.2: A2, D3 and D4. Subgroups of mean range 1.
test.each([
  [2, 1.88, 0, 3.2665],
  [4, 0.7286, 0, 2.2821],
  [5, 0.5768, 0, 2.1145],
  [10, 0.3083, 0.223, 1.777],
])('CONTROLLIMITS with subgroups of %d uses A2 %d, D3 %d, D4 %d', async (n, a2, d3, d4) => {
  const subgroup = Array.from({ length: n }, (_, index) => 27 + index / (n - 1));
  const [, means, ranges] = await excelCall('CONTROLLIMITS', [subgroup, Array(n).fill(null), [...subgroup].reverse()]);
  expect(means).toEqual(['Mean', expect.closeTo(27.5 - a2, 4), expect.closeTo(27.5, 12), expect.closeTo(27.5 + a2, 4)]);
  expect(ranges).toEqual(['Range', expect.closeTo(d3, 4), expect.closeTo(1, 12), expect.closeTo(d4, 4)]);
});

test('CONTROLLIMITS gives the published individuals chart (NIST/SEMATECH e-Handbook 6.3.2.2)', async () => {
  const values = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1].map(value => [value]);
  const [header, individual, moving] = await excelCall('CONTROLLIMITS', values);
  expect(header).toEqual(['Chart', 'Lower', 'Centre', 'Upper']);
  expect(individual).toEqual(['Individual', expect.closeTo(45.8159, 4), expect.closeTo(50.81, 10), expect.closeTo(55.8041, 4)]);
  expect(moving!.slice(0, 3)).toEqual(['Moving range', 0, expect.closeTo(1.8778, 4)]);
});

// NIST/SEMATECH e-Handbook 6.1.6: upper 20, lower 8, mean 16, s 2, n 50; limits by chi-square and normal approximation, computed in R.
const reach = 2 * Math.sqrt(49 / 50);
const fifty = Array.from({ length: 50 }, (_, index) => 16 + (index % 2 ? reach : -reach));
const six = (...values: number[]) => values.map(value => expect.closeTo(value, 6));

test('CAPABILITY gives the published indices: overall for a column, within too for one subgroup', async () => {
  const column = await excelCall(
    'CAPABILITY',
    fifty.map(value => [value]),
    8,
    20,
    14,
  );
  expect(column.map(([index]) => index)).toEqual(['Index', 'Cp', 'Cpk', 'Cpm', 'Pp', 'Ppk']);
  expect(column.slice(3)).toEqual([
    ['Cpm', expect.closeTo(0.7071, 4), '', ''],
    ['Pp', ...six(1, 0.802482, 1.197126)],
    ['Ppk', ...six(0.666667, 0.505551, 0.827782)],
  ]);
  expect((await excelCall('CAPABILITY', [fifty], 8, 20)).slice(1, 4)).toEqual([
    ['Cp', ...six(1, 0.802482, 1.197126)],
    ['Cpk', ...six(0.666667, 0.505551, 0.827782)],
    ['Cpm', '', '', ''],
  ]);
});

test('GAUGESTUDY gives the published study (AIAG MSA, 4th ed.)', async () => {
  const rows = readFileSync(join(__dirname, '../cases/gaugeStudy/gauge-study.csv'), 'utf8').trim().split('\n').slice(1);
  const cells = rows.map(line => line.replace(/"/g, '').split(','));
  const columns = [1, 2, 0].map(column => cells.map(row => [row[column]]));
  const study = await excelCall('GAUGESTUDY', ...columns);
  expect(study.map(([source]) => source)).toEqual([
    'Source',
    'Repeatability',
    'Reproducibility',
    'Gauge',
    'Part',
    'Total',
    'Distinct categories',
  ]);
  expect(study[3]![2]).toBeCloseTo(0.2786, 4);
  expect(study[6]).toEqual(['Distinct categories', 4, '', '']);
});

test('in US units PRESSUREDROP is the metric drop by the factors of NIST SP 811', async () => {
  const gallon = 3.785411784;
  const psi = 6894.757293168361;
  const [[us]] = (await excelCall('PRESSUREDROP', 16, 0.75, 10, 46, 'US')) as [[number]];
  const [[metric]] = (await excelCall('PRESSUREDROP', 16 * gallon, 0.75 * 25.4, 10 * 0.3048, 46, 'metric')) as [[number]];
  expect((us * psi) / (metric * 1e5)).toBeCloseTo(1, 12);
  expect(await excelCall('PRESSUREDROP', 16, '3/4"', `10'`, 46, 'US')).toEqual([[expect.closeTo(us, 12)]]);
});
