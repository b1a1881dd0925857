import { catalogueDialsNotes } from '../../src/core/catalogue/catalogueDials';
import { noteSentence } from '../core/catalogue/noteSentence';
import { problemSentence } from '../../src/core/catalogue/problem';
import { readCatalogue, type RawTables } from '../../src/core/catalogue/readCatalogue';
import type { RawCell, RawTable } from '../../src/core/catalogue/rawTable';
import { crimpSetup, trialDial } from '../../src/functions/assembly';
import { treeTables, withCell } from '../core/catalogue/treeCatalogue';
import { called, col } from '../host/customFunctions';
import { catalogueOf, one } from './treeHandle';

const SIZES = [10, 12, 16, 19, 25];
const hoseOf = (size: number) => `Alder DN ${size}`;
const endOf = (size: number) => `Alder end DN ${size}`;
/** Catalogue dials and crimp diameters by size; all invented. */
const DIALS: Record<number, number> = { 10: 413, 12: 420, 16: 433, 19: 445, 25: 460 };
const DIAMETERS: Record<number, number> = { 10: 20, 12: 20.4, 16: 20.8, 19: 21.2, 25: 40 };
const DIES: Record<number, string> = { 10: 'D20', 12: 'D20', 16: 'D20', 19: 'D20', 25: 'D39' };

const HEADINGS = ['Machine', 'Catalogue dials', 'Die', 'Hose', 'Fitting', 'Dial', 'Step (mm)', 'Lowest', 'Highest', 'Date'];
const describing = (name: string, dials: RawCell, step: RawCell = 0.04, lowest: RawCell = null, highest: RawCell = null) => [
  name,
  dials,
  null,
  null,
  null,
  null,
  step,
  lowest,
  highest,
  null,
];
const record = (name: string, size: number, dial: RawCell, date: RawCell = null, die = DIES[size]!) => [
  name,
  null,
  die,
  hoseOf(size),
  endOf(size),
  dial,
  null,
  null,
  null,
  date,
];

function tables(...machines: RawCell[][]): RawTables {
  const [hoseHead, fittingHead, crimpHead] = [treeTables.hoses[0]!, treeTables.fittings[0]!, treeTables.crimps[0]!];
  const hoses: RawTable = SIZES.map(size => [hoseOf(size), 'Alder', null, null, size, 250]);
  const ends: RawTable = SIZES.map(size => [endOf(size), 'Alder', '24° cone', null, 'L', 0, null, size, 30]);
  const crimps: RawTable = SIZES.map(size => [
    hoseOf(size),
    endOf(size),
    null,
    DIES[size]!,
    DIALS[size]!,
    DIAMETERS[size]!,
    0.15,
  ]);
  return {
    hoses: [hoseHead, ...hoses],
    fittings: [fittingHead, ...ends],
    crimps: [crimpHead, ...crimps],
    machines: [HEADINGS, ...machines],
  };
}

const trial = (size: number, machine: string, ...machines: RawCell[][]) =>
  called(() => trialDial(catalogueOf(tables(...machines)), one(hoseOf(size)), one(endOf(size)), one(machine)))[0]!;

const dialAndSource = (size: number, machine: string, ...machines: RawCell[][]) => {
  const found = called(() => crimpSetup(catalogueOf(tables(...machines)), one(hoseOf(size)), one(endOf(size)), one(machine)))[0]!;
  return [found[1], found[5]];
};

describe('CRIMPSETUP with a machine', () => {
  test.each<[string, RawCell[][], unknown[]]>([
    ['the only machine takes the catalogue’s dials', [describing('Bench 1', null)], [413, 'CATALOGUE']],
    ['the only machine says no', [describing('Bench 1', 'no')], ['', 'NO DIAL']],
    ['one of two machines says nothing', [describing('Bench 1', null), describing('Van', 'no')], ['', 'NO DIAL']],
    ['one of two machines says yes', [describing('Bench 1', 'yes'), describing('Van', null)], [413, 'CATALOGUE']],
    ['TRUE is yes', [describing('Bench 1', true), describing('Van', null)], [413, 'CATALOGUE']],
    ['a second machine that has records only', [describing('Bench 1', null), record('Van', 12, 300)], ['', 'NO DIAL']],
    ['its own record wins', [describing('Bench 1', 'no'), record('Bench 1', 10, 401)], [401, 'MACHINE']],
    [
      'a record with another die is not its own for this',
      [describing('Bench 1', 'no'), record('Bench 1', 10, 401, null, 'D21')],
      ['', 'NO DIAL'],
    ],
  ])('%s', (_, machines, expected) => expect(dialAndSource(10, 'Bench 1', ...machines)).toEqual(expected));

  test('without a machine the dial is the catalogue’s', () => {
    const handle = catalogueOf(tables(describing('Bench 1', 'no'), describing('Van', 'no')));
    expect(crimpSetup(handle, one(hoseOf(10)), one(endOf(10)), null as never)[0]).toEqual([
      'D20',
      413,
      20,
      0.15,
      '',
      'CATALOGUE',
    ]);
  });

  test.each<[string, RawCell, RawCell, number]>([
    ['the newest record counts', '2026-03-05', '2026-03-04', 401],
    ['of one day the later time of day', '2026-03-05 14:30', '2026-03-05 09:00', 401],
    ['a time of day is later than the bare day', '2026-03-05 00:01', '2026-03-05', 401],
    ['a day number with a fraction is a time of day', 46_086.5, 46_086.25, 401],
    ['of the same date and time the lower row', '2026-03-05 09:00', '2026-03-05 09:00', 402],
    ['without dates the lower row', null, null, 402],
    ['an undated record is the oldest', '2026-03-05', null, 401],
  ])('%s', (_, first, second, dial) => {
    const records = [record('Bench 1', 10, 401, first), record('Bench 1', 10, 402, second)];
    expect(dialAndSource(10, 'Bench 1', describing('Bench 1', 'no'), ...records)).toEqual([dial, 'MACHINE']);
    expect(readCatalogue(tables(...records)).leftOutRows).toBe(0);
  });

  test('notes say which cell to fill', () => {
    const notes = (...machines: RawCell[][]) =>
      catalogueDialsNotes(readCatalogue(tables(...machines)).rows.machines).map(noteSentence);
    expect(notes(describing('Bench 1', null))).toEqual([]);
    expect(notes(describing('Bench 1', 'yes'), describing('Van', 'no'))).toEqual([]);
    expect(notes(describing('Bench 1', 'yes'), describing('Van', null), record('Shed', 10, 400))).toEqual([
      'Machines row 3: Catalogue dials is blank for "Van": the dials of Crimps are not used for it; enter yes or no',
      'Machines row 4: "Shed" has no row without die: the dials of Crimps are not used for it; add one with Catalogue dials yes or no',
    ]);
  });

  test('what is neither yes nor no is a problem, and so is a recorded dial off its machine’s scale', () => {
    const problems = (...machines: RawCell[][]) => readCatalogue(tables(...machines)).problems.map(problemSentence);
    expect(problems(describing('Bench 1', 'maybe'))).toEqual(['Machines row 2: Catalogue dials is "maybe", expected yes or no']);
    const scale = describing('Bench 1', 'yes', 0.04, 100, 500);
    expect(problems(scale, record('Bench 1', 10, 500), record('Bench 1', 12, 100), record('Van', 12, 900))).toEqual([]);
    expect(problems(scale, record('Bench 1', 10, 501), record('Bench 1', 12, -1086))).toEqual([
      "Machines row 3: Dial is 501, expected on the machine's scale, 100 … 500",
      "Machines row 4: Dial is -1086, expected on the machine's scale, 100 … 500",
    ]);
    const [found] = dialAndSource(10, 'Bench 1', scale, record('Bench 1', 10, 501, '2026-03-05'), record('Bench 1', 10, 400));
    expect(found).toMatch(/^#N\/A machine "Bench 1" has a recorded setting that was left out .*Machines row 3: Dial is 501/);
  });

  test('a crimp diameter outside its die is a problem', () => {
    const dies = [
      ['Die', 'Smallest (mm)', 'Largest (mm)'],
      ['D23', 23.45, 27],
    ];
    expect(readCatalogue({ ...treeTables, dies }).problems.map(problemSentence)).toEqual([
      'Crimps row 2: Crimp diameter is 23.4, expected within the range of its die, 23.45 … 27',
    ]);
    expect(readCatalogue({ ...withCell('crimps', 1, 'Crimp diameter (mm)', 23.45), dies }).problems).toEqual([]);
  });
});

describe('TRIALDIAL', () => {
  const yes = describing('Bench 1', 'yes');
  const no = describing('Bench 1', 'no');

  // Student's t with 2 degrees of freedom, 4.302653; mean ± t·s·√(1 + 1/3): 415.667, 412.80 … 418.54. Computed, independent of the project.
  test('the catalogue’s dial and how the machine’s records differ from theirs', () => {
    const [dial, low, high, records, basis] = trial(
      10,
      'Bench 1',
      yes,
      record('Bench 1', 12, 422),
      record('Bench 1', 16, 436),
      record('Bench 1', 19, 448),
    );
    expect([dial, records, basis]).toEqual([416, 3, 'CATALOGUE']);
    expect(low).toBeCloseTo(412.798, 3);
    expect(high).toBeCloseTo(418.535, 3);
  });

  // diffs 2 and 3: 415.5 ± 12.706205·0.707107·√1.5 (t with 1 degree of freedom, published tables: 12.706); half a digit away from 0.
  test('two records are enough for an interval, one is not, and half a digit rounds away from 0', () => {
    const [dial, low, high, records] = trial(10, 'Bench 1', yes, record('Bench 1', 12, 422), record('Bench 1', 16, 436));
    expect([dial, records]).toEqual([416, 2]);
    expect([Number(low) - 415.5, Number(high) - 415.5].map(each => each.toFixed(3))).toEqual(['-11.004', '11.004']);
    expect(trial(10, 'Bench 1', yes, record('Bench 1', 12, 422))).toEqual([415, '', '', 1, 'CATALOGUE']);
    const opposite = [record('Bench 1', 12, 420 - 826), record('Bench 1', 16, 433 - 827)];
    expect(trial(10, 'Bench 1', yes, ...opposite)[0]).toBe(-414);
  });

  test('without records it is the catalogue’s dial, where that holds', () => {
    expect(trial(10, 'Bench 1', describing('Bench 1', null))).toEqual([413, '', '', 0, 'CATALOGUE']);
    expect(trial(10, 'Bench 1', yes, record('Van', 12, 430))).toEqual([413, '', '', 0, 'CATALOGUE']);
  });

  test('its own record comes first', () => {
    const records = [record('Bench 1', 10, 401), record('Bench 1', 12, 422), record('Bench 1', 16, 436)];
    expect(trial(10, 'Bench 1', yes, ...records)).toEqual([401, '', '', 1, 'RECORD']);
    expect(trial(10, 'Bench 1', no, ...records)).toEqual([401, '', '', 1, 'RECORD']);
  });

  test('only the newest record of each pair counts', () => {
    const twice = [record('Bench 1', 12, 300, '2026-01-05'), record('Bench 1', 12, 424, '2026-02-05')];
    expect(trial(10, 'Bench 1', yes, ...twice, record('Bench 1', 16, 435, '2026-02-05'))).toEqual([
      416,
      expect.any(Number),
      expect.any(Number),
      2,
      'CATALOGUE',
    ]);
  });

  // Worked by hand: 12 is 0.4 larger than 10 and was set to 200, 16 is 0.8 larger and was set to 190; 0.04 a digit: 210 and 210.
  test('where the catalogue’s dials do not hold, its records with that die, by diameter and step', () => {
    const records = [record('Bench 1', 12, 200), record('Bench 1', 16, 190), record('Bench 1', 25, 777)];
    expect(trial(10, 'Bench 1', no, ...records)).toEqual([210, 210, 210, 2, 'SAME DIE']);
    const looser = describing('Bench 1', 'no', -0.04);
    expect(trial(10, 'Bench 1', looser, record('Bench 1', 12, 200))).toEqual([190, '', '', 1, 'SAME DIE']);
  });

  test('nothing to go by: another die, no step, no record', () => {
    const nothing = '#N/A nothing to go by for Alder DN 10 with Alder end DN 10 on Bench 1';
    for (const machines of [
      [no],
      [no, record('Bench 1', 25, 300)],
      [describing('Bench 1', 'no', null), record('Bench 1', 12, 200)],
    ]) {
      expect(trial(10, 'Bench 1', ...machines)[0]).toMatch(nothing);
    }
    expect(trial(10, 'Elm', no)).toEqual(
      Array(5).fill('#N/A machine "Elm" is not in the catalogue: check its name, or add it to the table Machines'),
    );
  });

  test('no crimp data: do not assemble', () => {
    const handle = catalogueOf(tables(yes));
    expect(called(() => trialDial(handle, one(hoseOf(10)), one(endOf(12)), one('Bench 1')))[0]![0]).toMatch(
      /^#N\/A no crimp data for Alder DN 10 with Alder end DN 12: do not assemble/,
    );
  });

  test('a dial outside the machine’s scale is an error', () => {
    const scale = describing('Bench 1', 'yes', 0.04, 100, 415);
    expect(trial(10, 'Bench 1', scale, record('Bench 1', 12, 415))).toEqual([408, '', '', 1, 'CATALOGUE']);
    expect(trial(16, 'Bench 1', scale)[0]).toMatch(/^#VALUE! dial would be 433, above 415: it is not on the machine’s scale/);
    expect(trial(10, 'Bench 1', describing('Bench 1', 'yes', 0.04, 414))[0]).toMatch(/^#VALUE! dial would be 413, below 414/);
  });

  test('a column of pairs, a blank row and a blank machine', () => {
    const handle = catalogueOf(tables(yes, record('Bench 1', 12, 422)));
    const found = called(() =>
      trialDial(
        handle,
        col(hoseOf(12), null, hoseOf(10), hoseOf(10)),
        col(endOf(12), null, endOf(10), endOf(10)),
        col('Bench 1', 'Bench 1', 'bench 1 ', null),
      ),
    );
    expect(found).toEqual([
      [422, '', '', 1, 'RECORD'],
      ['', '', '', '', ''],
      [415, '', '', 1, 'CATALOGUE'],
      Array(5).fill('#VALUE! machine is blank: fill it in'),
    ]);
  });
});
