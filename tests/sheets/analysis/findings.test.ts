import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Decimal } from '../../../src/core/units/decimal';
import { blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { analyseReadings, type ReadingsAnalysis } from '../../../src/sheets/analysis/analyseReadings';
import { findingLines } from '../../../src/sheets/analysis/finding';
import { findingsOf } from '../../../src/sheets/analysis/findingsOf';
import { mixedNote } from '../../../src/sheets/analysis/settingFinding';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import type { MachineFacts } from '../../../src/sheets/analysis/machineFacts';
import { crimpRowsOf, measuredCrimps } from '../../../src/sheets/crimps/readCrimpRows';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import { sheetContent } from '../table/sheetContent';
import { sampleSheets } from './sampleSheet';

interface Truth {
  readonly weeks: readonly {
    readonly sheet: string;
    readonly machine: number;
    readonly settings: Readonly<Record<string, number>>;
    readonly finding: string;
  }[];
}

const truth = JSON.parse(readFileSync(join(__dirname, '../../../samples/measurement-book.json'), 'utf8')) as Truth;

function analyse(rows: readonly (readonly CellValue[])[], facts: MachineFacts = {}): ReadingsAnalysis {
  const answers = { ...NO_ANSWERS, unit: new Map([['reading 1', 'mm']]) };
  const sheet = crimpSheetOf({ used: sheetContent(rows), answers }, blockOf(rows.length > 8 ? 'A8' : 'A2')!);
  const crimps = measuredCrimps(crimpRowsOf(sheet), 'mm');
  return analyseReadings({ unit: 'mm', crimps }, { factsOf: () => facts });
}

/** What stands first, and everything that is said after it. */
function textOf({ machines: [machine] }: ReadingsAnalysis) {
  const [first, ...others] = findingsOf(machine!, 'mm');
  const details = [...findingLines(first!).slice(1), ...others.flatMap(findingLines)];
  return { headline: first!.sentence, details, all: [first!, ...others] };
}
const known = (value: string) => ({ value: new Decimal(value), from: 'table Machines' });

let book: Awaited<ReturnType<typeof sampleSheets>>;
beforeAll(async () => {
  book = await sampleSheets('measurement-book.xlsx');
});
const week = (name: string, facts?: MachineFacts) => analyse(book[name] as CellValue[][], facts);

describe('the planted causes of the measurement book are named', () => {
  test.each(truth.weeks.map(planted => [planted.sheet, planted.finding, planted] as const))(
    '%s: %s',
    (sheet, finding, planted) => {
      const [machine] = week(sheet).machines;
      expect(machine!.cause.finding).toBe(finding);
      const own = machine!.combinations.filter(({ cause }) => cause.finding === 'OWN SETTING');
      expect(own.map(({ name }) => name)).toEqual(Object.keys(planted.settings));
      // Five combinations of six with a scatter of 0.02 and 0.015/√4: amounts are found to about 0.02.
      expect(machine!.cause.offset!.toNumber()).toBeCloseTo(planted.machine, 1);
      for (const { name, cause } of own) expect(-cause.correction.toNumber()).toBeCloseTo(planted.settings[name]!, 1);
    },
  );

  test('in one sentence each, with amounts', () => {
    expect(textOf(week('Week 38')).headline).toBe(
      'Machine and settings are in order: every combination is within tolerance on average.',
    );
    expect(textOf(week('Week 39', { step: known('0.016') })).headline).toMatch(
      /^Only Larch DN 16 with 24° cone is off, 0\.1[678] mm large: set its dial from 425 to 43[56], crimp one trial piece and measure\.$/,
    );
    expect(textOf(week('Week 40')).headline).toMatch(/^All combinations crimp 0\.(09|10|11) mm large: recalibrate\.$/);
    expect(textOf(week('Week 41')).headline).toMatch(/^The whole machine crimps 0\.(09|10|11) mm small: recalibrate\.$/);
    expect(textOf(week('Week 41')).all[1]!.sentence).toMatch(
      /^Alder DN 19 with 60° cone is 0\.1[789] mm large on its own: change its dial from 313 so that it crimps 0\.1[789] mm tighter, crimp one trial piece and measure\.$/,
    );
    expect(textOf(week('Week 42')).headline).toBe(
      'Not enough crimps yet: measure one more combination, two crimps or more of it.',
    );
  });
});

describe('the way to turn', () => {
  test('too large: tighter, by offset ÷ change per turn', () => {
    const analysis = week('Week 40', { perTurn: known('0.44') });
    const turns = analysis.machines[0]!.cause.offset!.div('0.44').toDecimalPlaces(2).toString();
    expect(textOf(analysis).details[0]).toBe(
      `Turn the calibration screw ${turns} turns tighter (0.44 mm a turn, table Machines). The machine’s manual says which way. Check again with one trial crimp.`,
    );
  });

  test('too small: looser', () => {
    expect(textOf(week('Week 41', { perTurn: known('0.44') })).details[0]).toMatch(
      /^Turn the calibration screw 0\.2\d* turns looser/,
    );
  });

  test('the change per turn is not known: the amount is said, no turns are made up', () => {
    expect(textOf(week('Week 40')).details[0]).toMatch(
      /^Turn the calibration screw so that it crimps 0\.\d\d mm tighter\. Enter its change per turn/,
    );
  });
});

describe('the next dial', () => {
  test('a machine on which a higher number crimps looser: the dial goes down', () => {
    expect(textOf(week('Week 39', { step: known('-0.022') })).headline).toMatch(/set its dial from 425 to 41[78],/);
  });

  test('a move larger than the machine’s largest is refused with its reason', () => {
    const facts = { step: known('0.016'), largestMove: new Decimal(5) };
    expect(textOf(week('Week 39', facts)).headline).toMatch(
      /no dial can be suggested \(.*more than 5.*look at die, hose, ferrule/,
    );
  });

  test('a digit too coarse for it is said', () => {
    expect(textOf(week('Week 39', { step: known('0.5') })).headline).toMatch(/one digit is too coarse for this tolerance/);
  });
});

/** Deviations in hundredths of mm around 27.35, four equal readings a crimp. */
const crimpsOf = (name: string, hundredths: readonly number[], dial = 400, die = 'D23'): CellValue[][] =>
  hundredths.map(each => [name, die, dial, ...Array<number>(4).fill((2735 + each) / 100), 27.35, 0.12]);
const HEAD = ['Combination', 'Die', 'Dial', 'Reading 1', 'Reading 2', 'Reading 3', 'Reading 4', 'Target', 'Tolerance'];

test('crimps made before the dial was changed do not tell about the setting as it is', () => {
  const others = ['B', 'C', 'D'].flatMap(name => crimpsOf(name, [-1, 0, 1, 0, 1, -1], 400, 'D31'));
  const before = crimpsOf('A', [20, 19, 21, 20], 390);
  const after = crimpsOf('A', [1, 0, -1, 0], 403);
  const [machine] = analyse([HEAD, ...before, ...after, ...others]).machines;
  expect(machine!.cause.finding).toBe('IN SPEC');
  expect(machine!.combinations[0]).toMatchObject({ name: 'A' });
  expect([machine!.combinations[0]!.crimps.length, machine!.combinations[0]!.counted.length]).toEqual([8, 4]);
});

test('the dial’s step is taken from the crimps where they show it and nobody states it', () => {
  // Larch at four dials 5 digits apart, 0.02 mm a digit; Alder off by its own setting at one dial.
  const noise = [1, -1, 0, 1, -1, 0];
  const larch = [0, 1, 2, 3].flatMap(times =>
    crimpsOf(
      'Larch',
      noise.map(each => 30 - 10 * times + each),
      400 + 5 * times,
    ),
  );
  const rest = ['Beech', 'Rowan'].flatMap(name => crimpsOf(name, noise, 400, 'D31'));
  const analysis = analyse([
    HEAD,
    ...larch,
    ...rest,
    ...crimpsOf(
      'Alder',
      noise.map(each => 20 + each),
      410,
      'D31',
    ),
  ]);
  const { headline, details } = textOf(analysis);
  expect(headline).toMatch(/Only Alder is off, 0\.20 mm large: set its dial from 410 to 420/);
  expect(details.join(' ')).toContain('0.02 mm a digit, as these crimps show');
});

describe('what is missing is asked for by name', () => {
  const off = (dial: number) =>
    ['A', 'B', 'C'].flatMap(name => crimpsOf(name, [0, 1, -1, 0, name === 'A' ? 1 : 0], dial, name === 'A' ? 'D' : name));
  const rows = (dial: number) => [...off(dial), ...crimpsOf('D', [20, 21, 19, 20, 20], dial, 'D')];

  test('dials stand in the sheet: only the change per digit', () => {
    expect(textOf(analyse([HEAD, ...rows(400)])).details[0]).toBe(
      'To get the next dial, enter the change per digit (Limits and machine, or table Machines).',
    );
  });

  test('no dials either: both', () => {
    const without = [HEAD, ...rows(400)].map(row => row.filter((_, column) => column !== 2));
    expect(textOf(analyse(without)).details[0]).toMatch(
      /enter the dials in a column Dial of the sheet, and the change per digit/,
    );
  });

  test('a chart of all combinations says which of them widens its limits', () => {
    const [machine] = analyse([HEAD, ...rows(400)]).machines;
    expect(mixedNote(machine!)).toBe('D is off on its own and widens these limits: look at one combination at a time.');
    expect(mixedNote(analyse([HEAD, ...off(400)]).machines[0]!)).toBeUndefined();
  });
});

test('an interval narrower than the caliper’s last digit is told with one more', () => {
  const rows = ['A', 'B', 'C'].flatMap(name =>
    crimpsOf(name, Array(20).fill(2), 400, name).concat(crimpsOf(name, [1.9, 2.1], 400, name)),
  );
  expect(textOf(analyse([HEAD, ...rows])).details[1]).toMatch(/between 0\.019 mm|between 0\.020 mm/);
});

describe('not enough crimps', () => {
  test('no column names hose and coupling: that is said, not "measure two more combinations"', () => {
    const rows = crimpsOf('A', [10, 11, 9, 10]).map(row => row.slice(1));
    const { headline, details } = textOf(analyse([HEAD.slice(1), ...rows]));
    expect(headline).toBe('No column names hose and coupling, so that all crimps count as one combination.');
    expect(details[1]).toMatch(/^Choose the column under “Columns read”\. It takes three combinations or more/);
  });

  test('no repeats: a second crimp is asked for', () => {
    const rows = ['A', 'B', 'C'].flatMap(name => crimpsOf(name, [10]));
    expect(textOf(analyse([HEAD, ...rows])).headline).toBe('Not enough crimps yet: measure a second crimp of A, B and C.');
  });

  test('too few repeats: how many more of which combination, and that many are enough to say something', () => {
    const few = [crimpsOf('A', [-10, 10]), crimpsOf('B', [9]), crimpsOf('C', [-9])].flat();
    expect(textOf(analyse([HEAD, ...few])).headline).toBe('Not enough crimps yet: measure two more of B.');
    const after = [...few, ...crimpsOf('B', [-10, 10])];
    expect(analyse([HEAD, ...after]).machines[0]!.cause.finding).not.toBe('NOT ENOUGH DATA');
  });
});

test('where explanations are as good it says so, what to measure, and corrects nothing', () => {
  const wide = [-14, 13, 2];
  const rows = [crimpsOf('A', wide), crimpsOf('B', wide), crimpsOf('C', [9, 16, 11])].flat();
  const analysis = analyse([HEAD, ...rows]);
  const { headline, details } = textOf(analysis);
  expect(analysis.machines[0]!.cause.finding).toBe('CANNOT TELL');
  expect(headline).toMatch(/^These crimps leave .+ open: measure \w+ more of C\.$/);
  expect(details[0]).toBe('More than one explanation fits as well. Correct nothing until then.');
  expect(analysis.machines[0]!.combinations.every(({ cause }) => cause.correction.isZero())).toBe(true);
});

test('one die throughout: the offset may be the die’s, and that is checked before recalibrating', () => {
  const rows = ['A', 'B', 'C'].flatMap(name => crimpsOf(name, [9, 10, 11, 10]));
  const { headline, details } = textOf(analyse([HEAD, ...rows]));
  expect(headline).toBe('All combinations crimp 0.10 mm large: machine or die D23.');
  expect(details[0]).toMatch(/with another die before you recalibrate/);
});

test('machines are judged one by one, and each crimp is counted once', () => {
  const rows = (machine: string, off: number) =>
    ['A', 'B', 'C'].flatMap(name => crimpsOf(name, [off - 1, off, off + 1, off])).map(row => [machine, ...row]);
  const { machines, counts } = analyse([['Machine', ...HEAD], ...rows('Gate', 0), ...rows('Van', 13)]);
  expect(machines.map(({ machine, cause }) => [machine, cause.finding])).toEqual([
    ['Gate', 'IN SPEC'],
    ['Van', 'MACHINE OR DIE'],
  ]);
  expect(counts).toEqual({ 'IN SPEC': 15, LOOSE: 9, TIGHT: 0, OVAL: 0, UNSURE: 0 });
});

test('an interval on either side of 0 that two decimals call 0.00 is told with three', () => {
  const rows = ['A', 'B', 'C'].flatMap(name =>
    crimpsOf(name, Array(20).fill(0), 400, name).concat(crimpsOf(name, [-0.25, 0.25], 400, name)),
  );
  const lines = textOf(analyse([HEAD, ...rows])).details.join(' ');
  expect(lines).toContain('Machine offset: between ');
  expect(lines).not.toMatch(/between −?0\.00 mm and −?0\.00 mm/);
});

test('many settings off by the same are asked about before any dial is changed', () => {
  const names = Array.from({ length: 12 }, (_, index) => `C${index}`);
  const rows = names.flatMap((name, index) =>
    crimpsOf(
      name,
      [0, 1, -1, 0, 1].map(each => each + (index < 4 ? 14 : 0)),
      400,
      index % 2 ? 'D22' : 'D26',
    ),
  );
  const { all } = textOf(analyse([HEAD, ...rows]));
  expect(all[0]!.sentence).toMatch(
    /^4 of 12 combinations are off by about the same, 0\.14 mm large: a second machine, or a die or caliper/,
  );
  expect(all[0]!.actions).toContain('Change no dial until that is clear.');
  expect(all.filter(({ kind }) => kind === 'setting')).toHaveLength(4);
});

test('a machine that came right is in order, with what it was before', () => {
  const dated = (name: string, day: number, off: number) =>
    crimpsOf(name, [off, off + 1, off - 1], 400, 'D22').map(row => [46_000 + day, ...row]);
  const rows = [0, 1, 2, 3, 4, 5].flatMap(day => ['A', 'B', 'C', 'D'].flatMap(name => dated(name, day, day < 3 ? 13 : 0)));
  const { headline, all } = textOf(analyse([['Date', ...HEAD], ...rows]));
  expect(headline).toMatch(/^Machine and settings are in order/);
  expect(all[0]!.look).toBe('success');
  expect(all[0]!.facts[0]).toMatch(/^The machine changed on 2025-12-12: \+0\.13 mm before, 0\.00 mm since\./);
});

describe('whether changes with time can be looked for', () => {
  const DAYS = [46_100, 46_101, 46_102, 46_103, 46_104, 46_105];
  const notes = (dates: readonly CellValue[]) => {
    const rows = dates.map((date, index) => [
      date,
      index % 2 ? 'Larch DN 12' : 'Larch DN 8',
      27.34 + index / 100,
      27.35,
      27.35,
      0.12,
    ]);
    const headings = ['Date', 'Hose', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)'];
    return analyse([headings, ...rows]).machines[0]!.counts.notes.filter(note => note.includes('with time'));
  };

  test.each<[string, CellValue[], string[]]>([
    ['all crimps have a date', DAYS, []],
    ['none has', DAYS.map(() => ''), ['The crimps have no dates: changes with time are not looked for. Add a column Date.']],
    [
      'two of six have',
      [46_100, '', '', '', '', 46_105],
      ['4 of 6 crimps have no date that can be read: changes with time are not looked for. Write dates like 2026-03-14.'],
    ],
  ])('%s', (_, dates, expected) => expect(notes(dates)).toEqual(expected));
});

describe('a die that is told as off', () => {
  const DAYS = Array.from({ length: 40 }, (_, index) => new Date(Date.UTC(2026, 8, 7 + index)).toISOString().slice(0, 10));
  const BEFORE = 24;
  const scatter = (day: number, combination: number) => [-2, 1, 0, 2, -1][(3 * day + 2 * combination) % 5]!;
  /** Two crimps a day of each combination: each with its die and its offset in hundredths of mm on a day. */
  const bookOf = (made: readonly (readonly [name: string, die: string, offset: (day: number) => number])[]) =>
    DAYS.flatMap((day, index) =>
      made.flatMap(([name, die, offset], combination) =>
        crimpsOf(
          name,
          [0, 1].map(k => offset(index) + scatter(index + k, combination)),
          400,
          die,
        ).map(row => [day, ...row]),
      ),
    );
  const right = () => 0;
  const fromThen = (day: number) => (day < BEFORE ? 0 : 18);
  const others = [
    ['C', 'D22', right],
    ['D', 'D22', right],
    ['E', 'D26', right],
    ['F', 'D26', right],
  ] as const;
  const told = (...made: (readonly [string, string, (day: number) => number])[]) => {
    const analysis = analyse([['Date', ...HEAD], ...bookOf([...made, ...others])]);
    expect(analysis.machines[0]!.cause.dies.filter(({ finding }) => finding === 'DIE').map(({ name }) => name)).toEqual(['D28']);
    return textOf(analysis).all.find(({ kind }) => kind === 'die')!;
  };

  test('is off where all that was made with it is', () => {
    const finding = told(['A', 'D28', fromThen], ['B', 'D28', fromThen]);
    expect(finding.title).toBe('Die D28 is off');
    expect(finding.sentence).toMatch(/^Since 2026-10-01 die D28 crimps 0\.18 mm large on its own\.$/);
  });

  test('may be a setting that was changed where only one of its combinations is off', () => {
    const finding = told(['A', 'D28', fromThen], ['B', 'D28', right]);
    expect(finding.title).toBe('Setting or die: A');
    expect(finding.sentence).toMatch(
      /^Since 2026-10-01 A crimps 0\.18 mm large on its own, but B, made with the same die D28, does not: a setting that was changed is as likely as the die\.$/,
    );
    expect(finding.actions.join(' ')).not.toMatch(/out of use/);
  });

  test('may be the setting of the only combination that was made with it', () => {
    const finding = told(['A', 'D28', fromThen]);
    expect(finding.title).toBe('Die D28 or its setting is off');
    expect(finding.actions[0]).toMatch(/^Only A was made with it: its setting may be what is off/);
  });
});
