import { outcomeOf, type Advice } from '../../../bench/causeAdvice';
import { analysisOf, type Analysed } from '../../../src/sheets/analysis/analysisOf';
import { NOTHING_DECIDED } from '../../../src/sheets/analysis/analysisMemory';
import type { MachineReadings } from '../../../src/sheets/analysis/analyseReadings';
import { findingsOf } from '../../../src/sheets/analysis/findingsOf';
import { timePicture } from '../../../src/sheets/analysis/timePicture';
import { NO_OPTIONS } from '../../../src/sheets/crimps/crimpReadOptions';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { isRejected } from '../../../src/sheets/crimps/judgeCrimpRow';
import { machineChangesOf } from '../../../src/sheets/crimps/readMachineChanges';
import { blockOf } from '../../../src/workbook/a1';
import { sheetContent } from '../table/sheetContent';
import { PLANTED_SHEETS, TOLERANCE, type PlantedSheet } from './plantedSheets';

// Planted truth, not the tool, says what is right: 400 crimps, 30 combinations, 8 weeks, or thin books; read by the ordinary reader.

function analyse({ rows, log }: PlantedSheet): Analysed {
  const changes = log ? machineChangesOf(sheetContent(log, 'Machine log')) : [];
  const sheet = crimpSheetOf({ used: sheetContent(rows, 'Crimps') }, blockOf('A3')!);
  return analysisOf(sheet, NO_OPTIONS, { changes, memory: NOTHING_DECIDED, today: '2026-06-01' });
}

/** What the analysis says, in tolerances, as the benchmark of causes scores it. */
function adviceOf({ cause, combinations }: MachineReadings): Advice {
  const isSure =
    cause.finding !== 'NOT ENOUGH DATA' && !cause.mixed && combinations.some(each => each.cause.finding !== 'CANNOT TELL');
  const own = combinations.filter(each => each.cause.finding === 'OWN SETTING');
  const open = combinations.filter(each => each.cause.finding === 'CANNOT TELL');
  return {
    isSure,
    machine: -cause.correction.toNumber() / TOLERANCE,
    combinations: {
      off: new Map(own.map(({ name, cause: each }) => [name, -each.correction.toNumber() / TOLERANCE])),
      open: new Set(open.map(({ name }) => name)),
    },
    dies: {
      off: new Map(
        cause.dies.flatMap(({ name, finding, offset }) => (finding === 'DIE' ? [[name, offset! / TOLERANCE] as const] : [])),
      ),
      open: new Set(cause.dies.flatMap(({ name, finding }) => (finding === 'CANNOT TELL' ? [name] : []))),
    },
  };
}

const THIN = /thin/;

describe.each(PLANTED_SHEETS)('%s', (name, plant) => {
  const planted = plant();
  let analysed: Analysed;
  beforeAll(() => {
    analysed = analyse(planted);
  });
  const machine = () => analysed.analysis.machines[0]!;
  const said = () =>
    findingsOf(machine(), 'mm')
      .map(({ kind, title, sentence }) => `${kind}: ${title}: ${sentence}`)
      .join('\n');

  test('the sheet is read', () => {
    expect(analysed.crimps.length).toBeGreaterThanOrEqual((planted.rows.length - 1) * 0.98);
    expect(analysed.analysis.machines).toHaveLength(1);
    expect(analysed.analysis.order).toBe('date');
  });

  test('the right finding, or that it cannot be told', () => {
    if (process.env.SHOW) console.log(name, '\n', said(), '\n', machine().counts.notes.join('\n'));
    if (planted.isMixed) {
      expect(said()).toMatch(/^mixed: /);
      expect(machine().cause.correction.isZero()).toBe(true);
      return;
    }
    const outcome = outcomeOf(adviceOf(machine()), planted.truth);
    expect([said(), outcome]).toEqual([said(), expect.not.stringMatching(/^wrong$/)]);
    // Ample books say enough.
    if (!THIN.test(name)) expect([said(), outcome]).toEqual([said(), expect.stringMatching(/^right/)]);
  });

  test('never green while crimps made since the last change are rejected', () => {
    const isGreen = findingsOf(machine(), 'mm').some(({ look }) => look === 'success');
    const since = machine().crimps.filter(({ date }) => date !== undefined && date >= (planted.lastChange ?? -Infinity));
    const isAtOldDial = (dial: unknown) => name.startsWith('a dial') && String(dial) === '400';
    const rejected = since.filter(({ verdict, dial, combination }) => {
      const changed = machine().combinations.find(each => each.name === combination)!;
      return isRejected(verdict) && !(isAtOldDial(dial) && changed.counted.length < changed.crimps.length);
    });
    expect(isGreen && rejected.length > 0).toBe(false);
  });

  test('findings come with something to do, and the worst is first', () => {
    const findings = findingsOf(machine(), 'mm');
    expect(findings.length).toBeGreaterThan(0);
    for (const each of findings) expect(each.actions.length + each.next.length).toBeGreaterThan(0);
    expect(new Set(findings.map(({ title }) => title)).size).toBe(findings.length);
  });
});

test('a date that lies ten years off is not counted, and does not stretch the picture over time', () => {
  const [machine] = analyse(PLANTED_SHEETS.find(([name]) => name.startsWith('slips'))![1]()).analysis.machines;
  const dates = timePicture(machine!)!.points.map(({ date }) => date);
  expect(Math.max(...dates) - Math.min(...dates)).toBeLessThan(60);
  expect(machine!.counts.notes).toContain('Not counted (no date that can be right): rows 151, 152.');
});
