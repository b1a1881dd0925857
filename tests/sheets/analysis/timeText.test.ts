import { blockOf } from '../../../src/workbook/a1';
import { analyseReadings } from '../../../src/sheets/analysis/analyseReadings';
import { findingsOf } from '../../../src/sheets/analysis/findingsOf';
import { timeText } from '../../../src/sheets/analysis/timeText';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { crimpRowsOf, measuredCrimps } from '../../../src/sheets/crimps/readCrimpRows';
import { sheetContent } from '../table/sheetContent';

const HEAD = ['Date', 'Machine', 'Hose', 'Coupling', 'Target (mm)', 'Tolerance (mm)', 'R1 (mm)', 'R2 (mm)'];
const PAIRS = [
  ['Larch DN 12', 25],
  ['Alder DN 16', 28],
  ['Ash DN 20', 31],
  ['Elm DN 25', 38],
] as const;
/** 7 September 2026. */
const FIRST_DAY = 46_272;

/** Each day one crimp of every pair, by so much too large. */
function machineOf(offset: (day: number) => number) {
  const rows = Array.from({ length: 14 }, (_, day) =>
    PAIRS.map(([hose, target], at) => {
      const scatter = (((day * 7 + at * 5) % 9) - 4) * 0.003;
      const mean = target + offset(day) + scatter;
      return [FIRST_DAY + day, 'Gate', hose, 'cone', target, 0.1, mean, mean];
    }),
  ).flat();
  const sheet = crimpSheetOf({ used: sheetContent([HEAD, ...rows]) }, blockOf('A2')!);
  const { machines } = analyseReadings({ unit: 'mm', crimps: measuredCrimps(crimpRowsOf(sheet), 'mm') }, { factsOf: () => ({}) });
  const machine = machines[0]!;
  return { found: findingsOf(machine, 'mm')[0]!.sentence, shown: timeText(machine) };
}

test('a drift from the first day on is said under the picture as it is in the finding', () => {
  const { found, shown } = machineOf(day => 0.015 * day);
  expect(found).toContain('The machine has drifted since 2026-09-07');
  expect(shown).toContain('The machine has drifted since 2026-09-07.');
  expect(shown).not.toContain('No change');
});

test('a machine that changed on a day, and one that did not', () => {
  expect(machineOf(day => (day < 7 ? 0 : 0.15)).shown).toMatch(/^The machine changed on 2026-09-14\. Thick/);
  expect(machineOf(() => 0).shown).toMatch(/^No change of the machine was found\. /);
});
