import { simulatedWeeks } from '../../../bench/simulatedWeeks';
import { crimpCause, type MachineFinding } from '../../../src/core/quality/crimpCause';
import { Decimal } from '../../../src/core/units/decimal';

// Planted truth, not the tool, says what is right; scatter 15 to 35 % of the tolerance, as in bench/README.md.
const kind = { combinations: [4, 8], crimps: [3, 10], scatter: [0.15, 0.35], off: [0.7, 1.5] } as const;
const EXPECTED = { nothing: 'IN SPEC', machine: 'MACHINE', setting: 'SETTING', 'machine and setting': 'BOTH' } as const;

test('in 400 simulated weeks the planted cause is found in at least 19 of 20', () => {
  const weeks = simulatedWeeks(400, 7, kind);
  const right = weeks.filter(({ planted, combinations }) => {
    const cause = crimpCause({
      groups: combinations,
      tolerance: new Decimal(1),
      confidence: 0.95,
      actionShare: new Decimal(0.5),
    });
    const named = cause.combinations.filter(({ finding }) => finding === 'OWN SETTING').map(({ name }) => name);
    const off = combinations.filter(({ settingOff }) => settingOff).map(({ name }) => name);
    return cause.finding === (EXPECTED[planted] satisfies MachineFinding) && named.join() === off.join();
  });
  expect(right.length / weeks.length).toBeGreaterThanOrEqual(0.95);
});
