// Books of crimps with planted causes as sheets, headed as people head theirs. Invented; the same for the same seed.
import { seededUniform } from '../../../bench/seededUniform';
import type { CellValue } from '../../../src/workbook/workbook';
import { book, type TrialBook, type TrialCrimp, type TrialTruth } from '../../cases/crimpCause/trial.mjs';

export const TOLERANCE = 0.12;
/** 2026-01-05, a Monday. */
const FIRST_DAY = 46_027;
const HOSES = ['Alder DN 10', 'Alder DN 12', 'Larch DN 16', 'Larch DN 19', 'Rowan DN 12', 'Rowan DN 25'];
const ENDS = ['24° cone', '60° cone', 'split flange', 'elbow 90°', 'banjo'];

/** A sheet with what was planted in it. */
export interface PlantedSheet {
  readonly rows: readonly (readonly CellValue[])[];
  readonly log?: readonly (readonly CellValue[])[];
  readonly truth: TrialTruth;
  /** Two machines under no name: nothing may be corrected. */
  readonly isMixed?: boolean;
  /** First day after the last change that was planted, as a number of the sheet. */
  readonly lastChange?: number;
}

/** Headings of a sheet: `hose`, `end`, `die`, `dial` and `date` are left out where blank. */
interface Heads {
  readonly date: string;
  readonly hose: string;
  readonly end: string;
  readonly die: string;
  readonly dial: string;
  readonly readings: readonly [string, string, string, string];
  readonly target: string;
  readonly tolerance: string;
}

const PLAIN: Heads = {
  date: 'Date',
  hose: 'Hose',
  end: 'Coupling',
  die: 'Die',
  dial: 'Dial',
  readings: ['Reading 1 (mm)', 'Reading 2 (mm)', 'Reading 3 (mm)', 'Reading 4 (mm)'],
  target: 'Target (mm)',
  tolerance: 'Tolerance (mm)',
};
export const HEADS: readonly Heads[] = [
  PLAIN,
  {
    date: 'Crimped on',
    hose: 'Hose type',
    end: 'End fitting',
    die: 'Die set',
    dial: 'Dial setting',
    readings: ['Measured 1 (mm)', 'Measured 2 (mm)', 'Measured 3 (mm)', 'Measured 4 (mm)'],
    target: 'Crimp dia (mm)',
    tolerance: '± (mm)',
  },
  {
    date: 'Day',
    hose: 'HOSE',
    end: 'FITTING',
    die: 'DIE',
    dial: 'DIAL',
    readings: ['0° (mm)', '45° (mm)', '90° (mm)', '135° (mm)'],
    target: 'NOMINAL (mm)',
    tolerance: 'TOL (mm)',
  },
];

export const namesOf = (combination: string): readonly [string, string] => {
  const number = Number(/\d+/.exec(combination)![0]) % 30;
  return [HOSES[number % 6]!, ENDS[Math.floor(number / 6)]!];
};
export const combinationOf = (combination: string): string => namesOf(combination).join(' with ');
export const dieOf = (die: string): string => `D${20 + Number(/\d+/.exec(die)![0])}`;

const hundredths = (value: number) => Math.round(value * 100) / 100;

/** The rows of a book under some headings. */
export function sheetOf(
  crimps: readonly TrialCrimp[],
  heads: Heads,
  dialOf: (crimp: TrialCrimp) => CellValue = () => 400,
): CellValue[][] {
  const uniform = seededUniform(crimps.length);
  const columns: readonly (readonly [string, (crimp: TrialCrimp) => CellValue])[] = [
    [heads.date, ({ t }) => FIRST_DAY + t!],
    [heads.hose, ({ c }) => namesOf(c)[0]],
    [heads.end, ({ c }) => namesOf(c)[1]],
    [heads.die, ({ g }) => dieOf(g!)],
    [heads.dial, dialOf],
    ...heads.readings.map(
      (heading, index) =>
        [
          heading,
          ({ d }: TrialCrimp) => hundredths(25 + d * TOLERANCE + ((index % 2) - 0.5) * 0.03 + (uniform() - 0.5) * 0.004),
        ] as const,
    ),
    [heads.target, () => 25],
    [heads.tolerance, () => TOLERANCE],
  ];
  const used = columns.filter(([heading]) => heading !== '');
  return [used.map(([heading]) => heading), ...crimps.map(crimp => used.map(([, cell]) => cell(crimp)))];
}

const NOTHING: TrialTruth = { m: 0, C: new Map(), D: new Map() };
const named = (all: ReadonlyMap<string, number>, nameOf: (key: string) => string) =>
  new Map([...all].map(([key, value]) => [nameOf(key), value]));

/** The truth in the sheet's own names. */
const inSheet = ({ m, C, D }: TrialTruth): TrialTruth => ({ m, C: named(C, combinationOf), D: named(D, dieOf) });

function fromBook(size: string, planted: string, seed: number, heads = PLAIN, options: { sigma?: number } = {}): PlantedSheet {
  const made: TrialBook = book(size, planted, seed, options);
  return { rows: sheetOf(made.rows, heads), truth: inSheet(made.truth) };
}

/** A quiet book of 400 crimps, 30 combinations and 8 weeks to plant something in. */
const quiet = (seed: number): TrialCrimp[] => book('ample', 'fine', seed, { sigma: 0.22 }).rows.map(crimp => ({ ...crimp }));
const WEEK = (day: number) => Math.floor(day / 7) + 1;
const lastDay = (crimps: readonly TrialCrimp[]) => crimps.reduce((last, { t }) => Math.max(last, t!), 0);
/** First day of the sixth week of eight. */
const sixth = (crimps: readonly TrialCrimp[]) => Math.round((lastDay(crimps) * 5) / 8);
const combinationsOf = (crimps: readonly TrialCrimp[]) => [...new Set(crimps.map(({ c }) => c))];

function shiftInWeek6(seed: number, heads: Heads): PlantedSheet {
  const crimps = quiet(seed);
  const from = sixth(crimps);
  for (const crimp of crimps) if (crimp.t! >= from) crimp.d += 1.1;
  return { rows: sheetOf(crimps, heads), truth: { ...NOTHING, m: 1.1 }, lastChange: FIRST_DAY + from };
}

function recalibration(seed: number, isLogged: boolean, heads: Heads): PlantedSheet {
  const crimps = quiet(seed);
  const from = sixth(crimps);
  for (const crimp of crimps) if (crimp.t! < from) crimp.d -= 0.9;
  const log = [
    ['Date', 'Machine', 'Kind', 'What', 'Done by', 'Note'],
    [FIRST_DAY + 2, 'Press', 'Care', 'Grease the pins', 'P. Reed', ''],
    [FIRST_DAY + from - 1, 'Press', 'Recalibration', 'Calibration screw turned', 'P. Reed', '0.25 turns looser'],
  ];
  return { rows: sheetOf(crimps, heads), truth: NOTHING, lastChange: FIRST_DAY + from, ...(isLogged && { log }) };
}

function wornDie(seed: number, heads: Heads): PlantedSheet {
  const crimps = quiet(seed);
  const dies = [...new Set(crimps.map(({ g }) => g!))];
  const worn = dies[1]!;
  for (const crimp of crimps) if (crimp.g === worn) crimp.d += 1;
  return { rows: sheetOf(crimps, heads), truth: { ...NOTHING, D: new Map([[dieOf(worn), 1]]) } };
}

function dials(seed: number, wrong: number, heads: Heads): PlantedSheet {
  const crimps = quiet(seed);
  const step = Math.floor(30 / wrong);
  const off = new Map(
    combinationsOf(crimps)
      .filter((_, index) => index % step === 0)
      .slice(0, wrong)
      .map((name, index) => [name, index % 2 === 0 ? 1.2 : -1.1]),
  );
  for (const crimp of crimps) crimp.d += off.get(crimp.c) ?? 0;
  return { rows: sheetOf(crimps, heads), truth: inSheet({ ...NOTHING, C: off }) };
}

function twoMachines(seed: number, heads: Heads): PlantedSheet {
  const crimps = quiet(seed);
  const uniform = seededUniform(seed + 1);
  for (const crimp of crimps) crimp.d += uniform() < 0.5 ? 1.2 : -0.1;
  return { rows: sheetOf(crimps, heads), truth: NOTHING, isMixed: true };
}

/** A dial that was wrong until somebody changed it in the fourth week. */
function changedDial(seed: number, heads: Heads): PlantedSheet {
  const crimps = quiet(seed);
  const [first] = combinationsOf(crimps);
  const isOld = ({ c, t }: TrialCrimp) => c === first && WEEK(t!) < 4;
  for (const crimp of crimps) if (isOld(crimp)) crimp.d += 1.3;
  return { rows: sheetOf(crimps, heads, crimp => (isOld(crimp) ? 400 : crimp.c === first ? 410 : 400)), truth: NOTHING };
}

/** Slips of the pen in a book with a machine that is off: readings, dates, names. */
function typos(seed: number): PlantedSheet {
  const crimps = quiet(seed);
  for (const crimp of crimps) crimp.d += 0.9;
  const rows = sheetOf(crimps, PLAIN);
  const at = (heading: string) => rows[0]!.indexOf(heading);
  rows[17]![at('Reading 2 (mm)')] = 24.2;
  rows[60]![at('Reading 3 (mm)')] = 2.51;
  rows[101]![at('Reading 1 (mm)')] = 'n/a';
  rows[150]![at('Date')] = '32.13.2026';
  rows[151]![at('Date')] = FIRST_DAY - 3650;
  rows[200]![at('Coupling')] = ` ${String(rows[200]![at('Coupling')]).toUpperCase()}  `;
  rows[230]![at('Die')] = '';
  rows[300]![at('Hose')] = '';
  rows[300]![at('Coupling')] = '';
  return { rows, truth: { ...NOTHING, m: 0.9 } };
}

function twoCauses(seed: number, heads: Heads): PlantedSheet {
  const { rows, lastChange } = shiftInWeek6(seed, heads);
  const crimps = quiet(seed);
  const [name] = combinationsOf(crimps).slice(4);
  const [hose, end] = namesOf(name!);
  const at = heads.readings.map(heading => rows[0]!.indexOf(heading));
  const moved = rows.map(row =>
    row.includes(hose) && row.includes(end)
      ? row.map((cell, column) => (at.includes(column) ? hundredths((cell as number) - 1.3 * TOLERANCE) : cell))
      : row,
  );
  return { rows: moved, truth: { m: 1.1, C: new Map([[combinationOf(name!), -1.3]]), D: new Map() }, lastChange: lastChange! };
}

/** The seventeen books; with `more` added to the seed they come out otherwise. */
export const PLANTED_SHEETS: readonly (readonly [name: string, sheet: (more?: number) => PlantedSheet])[] = [
  ['nothing wrong', (more = 0) => ({ rows: sheetOf(quiet(11 + more), HEADS[0]!), truth: NOTHING })],
  ['nothing wrong, made in campaigns', (more = 0) => fromBook('ample', 'fine campaign', 12 + more, HEADS[1], { sigma: 0.22 })],
  ['a shift in week 6', (more = 0) => shiftInWeek6(13 + more, HEADS[1]!)],
  ['a shift, campaigns', (more = 0) => fromBook('ample', 'shift campaign', 14 + more, HEADS[2], { sigma: 0.22 })],
  ['a drift', (more = 0) => fromBook('ample', 'drift', 15 + more, HEADS[0], { sigma: 0.22 })],
  ['a drift, campaigns', (more = 0) => fromBook('ample', 'drift campaign', 16 + more, HEADS[1], { sigma: 0.22 })],
  ['recalibrated in week 6, logged', (more = 0) => recalibration(17 + more, true, HEADS[2]!)],
  ['recalibrated in week 6, not logged', (more = 0) => recalibration(18 + more, false, HEADS[0]!)],
  ['a worn die of five', (more = 0) => wornDie(19 + more, HEADS[1]!)],
  ['two machines without a column', (more = 0) => twoMachines(20 + more, HEADS[2]!)],
  ['one dial wrong', (more = 0) => dials(21 + more, 1, HEADS[0]!)],
  ['several dials wrong', (more = 0) => dials(22 + more, 5, HEADS[1]!)],
  ['a dial that was put right in week 4', (more = 0) => changedDial(23 + more, HEADS[2]!)],
  ['slips of the pen, machine off', (more = 0) => typos(24 + more)],
  ['two causes at once: shift and a dial', (more = 0) => twoCauses(25 + more, HEADS[1]!)],
  ['a thin book with a shift', (more = 0) => fromBook('thin', 'shift', 26 + more, HEADS[2])],
  ['a thin book with nothing wrong', (more = 0) => fromBook('thin', 'fine', 27 + more, HEADS[0])],
];
