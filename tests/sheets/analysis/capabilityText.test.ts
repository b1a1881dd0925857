import type { CapabilityIndex } from '../../../src/core/quality/capability';
import { allCapabilityText, oneCapabilityText } from '../../../src/sheets/analysis/capabilityText';

const index = (name: CapabilityIndex['index'], value: number) => ({ index: name, value }) as CapabilityIndex;
const all = (pp: number, ppk: number, cp: number) =>
  allCapabilityText({ cp: index('Cp', cp), pp: index('Pp', pp), ppk: index('Ppk', ppk), worst: undefined });

/*
 * Both tails count: the share beyond limits at z1 and z2 standard deviations is Φ(−z1) + Φ(−z2), z1 = 3 Ppk, z2 = 3 (2 Pp − Ppk). Φ(−1) = 0.1587,
 * Φ(−2) = 0.0228, Φ(−4) = 0.00003 (tables of the standard normal distribution; NIST/SEMATECH handbook, 1.3.6.7.1; from memory).
 */
test.each<[what: string, pp: number, ppk: number, share: string]>([
  ['in the middle, limits at one standard deviation', 1 / 3, 1 / 3, 'about 317 crimps of 1000'],
  ['in the middle, limits at two', 2 / 3, 2 / 3, 'about 46 crimps of 1000'],
  ['off the middle: one limit at one, the other at three', 2 / 3, 1 / 3, 'about 160 crimps of 1000'],
  ['far off: one limit at one, the other at nine', 5 / 3, 1 / 3, 'about 159 crimps of 1000'],
  ['the mean on a limit, the other at four', 2 / 3, 0, 'about 500 crimps of 1000'],
  ['the mean beyond a limit by one', 1 / 3, -1 / 3, 'about 843 crimps of 1000'],
])('what comes out with the settings as they are: %s', (_, pp, ppk, share) => {
  expect(all(pp, ppk, 1)).toMatch(new RegExp(`^With the settings as they are, ${share} would come out too large or too small;`));
  expect(oneCapabilityText('Alder DN 12', [index('Cp', 1), index('Pp', pp), index('Ppk', ppk)])).toContain(`: ${share} would`);
});

test('a centred process is as good as it would be with every setting right', () => {
  expect(all(0.46, 0.46, 0.46)).toBe(
    'With the settings as they are, about 168 crimps of 1000 would come out too large or too small; with every setting right it would be about 168 crimps of 1000.',
  );
});
