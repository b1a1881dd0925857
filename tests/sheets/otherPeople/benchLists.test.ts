import { NoJobs, readJobs } from '../../../src/sheets/jobs/readJobs';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { isReady } from '../../../src/sheets/jobs/jobLine';
import type { FakeCell } from '../../workbook/fakeWorkbook';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { expectJobs, expectLeftOut, expectQuestions, openSheet, STEP_OF_1_MM, toldLine, type SheetCase } from './sheetCase';

/** Lists as they lie beside a saw; what each must come to was written down before it was read. */
const SHEETS: readonly SheetCase[] = [
  {
    name: 'a column Cut with ticks says what is done, not how long it is',
    rows: [
      ['Hose', 'Length (mm)', 'Qty', 'Cut', 'Crimped', 'Tested'],
      ['Alder DN 12', 640, 2, 'x', '', ''],
      ['Alder DN 12', 650, 1, '', '', ''],
      ['Alder DN 12', 660, 1, '✓', '✓', ''],
    ],
    taken: ['3: Alder DN 12, cut 650 mm, × 1'],
    leftOut: ['2 done', '4 done'],
  },
  {
    name: 'blanks of all kinds around names and numbers',
    rows: [
      ['  Hose ', 'Cut length\u00a0(mm)', ' Qty '],
      ['  Alder\u00a0DN 12 ', ' 640 ', '\u00a02'],
      ['Alder  DN 12', '1\u00a0250', 1],
      [' ', ' ', ' '],
      ['Larch DN 16', '650\u202fmm', 1],
    ],
    taken: ['2: Alder DN 12, cut 640 mm, × 2', '5: Larch DN 16, cut 650 mm, × 1'],
    leftOut: ['3 stop: 1\u00a0250'],
  },
  {
    name: 'headings again on every page: what is below them is told',
    rows: [
      ['Hose', 'Cut length (mm)', 'Qty'],
      ['Alder DN 12', 640, 2],
      ['Hose', 'Cut length (mm)', 'Qty'],
      ['Larch DN 16', 650, 1],
      ['Page 2', '', ''],
      ['Hose', 'Cut length (mm)', 'Qty'],
      ['Larch DN 16', 660, 1],
    ],
    taken: ['2: Alder DN 12, cut 640 mm, × 2'],
    leftOut: ['4 below: in the table A3:C5', '7 below: in the table A6:C7'],
  },
  {
    name: 'units that nobody knows, or two of them: asked',
    rows: [
      ['Hose', 'End A', 'End B', 'Overall (dm)', 'Cut (mm/in)', 'Qty'],
      ['Alder DN 12', 'Straight', 'Straight', 8, 640, 1],
    ],
    taken: [],
    leftOut: ['2 stop: has no unit that is known'],
    asks: ['“dm” is no unit that is known', '“mm/in” is no unit that is known'],
  },
  {
    name: 'one length in two units: asked which counts, since they differ',
    rows: [
      ['Hose', 'Cut length (mm)', 'Cut length (in)', 'Qty'],
      ['Alder DN 12', 640, 25, 1],
    ],
    taken: [],
    leftOut: ['2 stop: B: Cut length (mm) and C: Cut length (in)'],
    asks: [
      'B: Cut length (mm) and C: Cut length (in) can both be the cut length. Which counts? → B: Cut length (mm) / C: Cut length (in)',
    ],
  },
  {
    name: 'the same, answered: the inches',
    rows: [
      ['Hose', 'Cut length (mm)', 'Cut length (in)', 'Qty'],
      ['Alder DN 12', 640, 25, 1],
    ],
    answers: [['role', 'Cut length (in)', 'cutLength']],
    taken: ['2: Alder DN 12, cut 25 in, × 1'],
  },
  {
    name: 'two columns headed Length, answered: the second is the length to cut',
    rows: [
      ['Hose', 'End A', 'End B', 'Length (mm)', 'Length (mm)', 'Qty'],
      ['Alder DN 12', 'Straight', 'Straight', 800, 640, 2],
    ],
    answers: [['role', 'Length (mm) #2', 'cutLength']],
    taken: ['2: Alder DN 12 [Straight + Straight], overall 800 mm, cut 640 mm, × 2'],
  },
  {
    name: 'finished lengths with the tolerance in the heading, abbreviations, numbers in brackets, ticks as numbers',
    rows: [
      ['#', 'Hose', 'Finished (mm) ±3', 'Cut len. (mm)', 'Pcs', 'Made?'],
      [1, 'Alder DN 12', 800, 640, 1, ''],
      [2, 'Alder DN 12', 810, '(650)', 1, ''],
      [3, 'Alder DN 12', 820, true, 1, ''],
      [4, 'Alder DN 12', 830, '6.6E2', 1, ''],
      [5, 'Alder DN 12', 840, 680, 4, 4],
      [6, 'Alder DN 12', 850, 690, 4, 1],
      [7, 'Alder DN 12', 860, 700, 4, 2],
    ],
    taken: ['2: Alder DN 12, overall 800 mm, cut 640 mm, × 1'],
    leftOut: [
      '3 stop: (650)',
      '4 stop: TRUE',
      '5 stop: 6.6E2',
      '6 stop: its status says 4',
      '7 done',
      '8 stop: its status says 2',
    ],
  },
  {
    name: 'a rack and notes on the same sheet: neither becomes hose to cut, nor hides it',
    rows: [
      ['Hose', 'Cut length (mm)', 'Qty', '', '', 'Hose', 'Length (m)', 'Bay'],
      ['Alder DN 12', 640, 2, '', '', 'Alder DN 12', 20, 'A1'],
      ['Larch DN 16', 650, 1, '', '', 'Larch DN 16', 30, 'A2'],
      [],
      [],
      ['Cut square.', '', '', '', '', '', '', ''],
      ['Blow through.', '', '', '', '', '', '', ''],
    ],
    taken: ['2: Alder DN 12, cut 640 mm, × 2', '3: Larch DN 16, cut 650 mm, × 1'],
  },
  {
    name: 'quantities with units in their heading, ordered and made, cut twice: the column of what is left counts by hand',
    rows: [
      ['Hose', 'Cut length (mm)', 'Qty (pcs)', 'Order', 'Wanted by'],
      ['Alder DN 12', 640, '2', 'O-17', '9 Oct 2026'],
      ['Alder DN 12', 640, '2,0', 'O-17', 'asap'],
    ],
    taken: ['2: Alder DN 12, cut 640 mm, × 2', '3: Alder DN 12, cut 640 mm, × 2'],
  },
  {
    name: 'a merged title between the lines, and one over the headings',
    rows: [
      ['Cut list of the yard', '', '', ''],
      ['Hose', 'Cut length (mm)', 'Qty', 'Note'],
      ['Alder DN 12', 640, 2, ''],
      ['Topper 3', '', '', ''],
      ['Larch DN 16', 650, 1, ''],
    ],
    details: { merges: { Jobs: ['A1:D1', 'A4:D4'] } },
    selected: 'A3',
    taken: ['3: Alder DN 12, cut 640 mm, × 2', '5: Larch DN 16, cut 650 mm, × 1'],
    leftOut: ['4 remark'],
  },
  {
    name: 'a heading that nobody knows over whole numbers, and no quantity: asked, refused until then',
    rows: [
      ['Hose', 'Cut length (mm)', 'To do', 'Size'],
      ['Alder DN 12', 640, 2, 12],
      ['Alder DN 12', 650, 1, 12],
    ],
    taken: [],
    leftOut: ['2 stop: whether C: To do is the quantity', '3 stop: no column says how many'],
    asks: ['Is C: To do the quantity? → Yes, that many of each / No, one of each line'],
  },
  {
    name: 'whole numbers without any heading beside the lengths: asked whether they are the quantity',
    rows: [
      ['Hose', 'Cut length (mm)', ''],
      ['Alder DN 12', 640, 2],
      ['Alder DN 12', 650, 3],
    ],
    taken: [],
    leftOut: ['2 stop: whether column C is the quantity', '3 stop: whether column C'],
    asks: ['Is column C the quantity?'],
  },
  {
    name: 'the same, answered',
    rows: [
      ['Hose', 'Cut length (mm)', ''],
      ['Alder DN 12', 640, 2],
    ],
    answers: [['role', 'column C', 'quantity']],
    taken: ['2: Alder DN 12, cut 640 mm, × 2'],
  },
  {
    name: 'an assembly number, a label called Step and a target beside the lines: nothing of it ends the list',
    rows: [
      ['Assembly', 'Hose', 'Length (mm)', 'Used on', 'Pcs'],
      ['A-17', 'Alder DN 12', 640, 'Step', 2],
      ['A-18', 'Alder DN 12', 650, 'Target', 3],
      ['A-19', 'Alder DN 12', 660, 'Topper', 1],
    ],
    taken: ['2: Alder DN 12, cut 640 mm, × 2', '3: Alder DN 12, cut 650 mm, × 3', '4: Alder DN 12, cut 660 mm, × 1'],
  },
  {
    name: 'one cell selected far below the only table, which is meant then',
    rows: [
      ['Hose', 'Cut length (mm)', 'Qty'],
      ['Alder DN 12', 640, 2],
    ],
    selected: 'F40',
    taken: ['2: Alder DN 12, cut 640 mm, × 2'],
  },
  {
    name: 'some rows selected: these only, whatever else is on the sheet',
    rows: [
      ['Hose', 'Cut length (mm)', 'Qty'],
      ['Alder DN 12', 640, 2],
      ['Alder DN 12', 650, 1],
      ['Larch DN 16', 660, 3],
      ['Larch DN 16', 670, 3],
    ],
    selected: 'B3:C4',
    taken: ['3: Alder DN 12, cut 650 mm, × 1', '4: Larch DN 16, cut 660 mm, × 3'],
  },
];

test.each(SHEETS)('$name', async from => expectJobs(from));

test('a table turned on its side has no lines: the sentence says what is looked for', async () => {
  const rows = [
    ['Hose', 'Alder DN 12', 'Larch DN 16'],
    ['Cut length (mm)', 640, 650],
    ['Qty', 2, 1],
  ];
  await expect(expectJobs({ name: '', rows, taken: [] })).rejects.toThrow(NoJobs);
  await expect(expectJobs({ name: '', rows, taken: [] })).rejects.toThrow(/column for the hose and one for its length/);
});

/** With a catalogue: the tree catalogue of the tests, in which all values are invented. */
const CATALOGUE = { catalogue: readCatalogue(treeTables) };
const STRAIGHT = 'Alder cone straight DN 12';
const ELBOW = 'Alder cone elbow DN 12';

const WITH_PARTS: readonly SheetCase[] = [
  {
    name: 'hose and couplings told by their names, whatever the headings',
    rows: [
      ['Pos.', 'Article', 'Left', 'Right', 'Length mm', 'Pc', 'Machine'],
      [1, 'Alder DN 12', STRAIGHT, ELBOW, 800, 2, 'Topper 3'],
      [2, 'alder dn 12', ELBOW, STRAIGHT, 900, 1, 'Topper 4'],
    ],
    taken: [
      `2: Alder DN 12 [${STRAIGHT} + ${ELBOW}], overall 800 mm, × 2`,
      `3: alder dn 12 [${ELBOW} + ${STRAIGHT}], overall 900 mm, × 1`,
    ],
  },
  {
    name: 'a cut length that does not belong, a part nobody knows, families that differ, too short: STOP, each with why',
    rows: [
      ['Hose', 'Fitting A', 'Fitting B', 'Overall (mm)', 'Cut (mm)', 'Qty'],
      ['Alder DN 12', STRAIGHT, STRAIGHT, 800, 740, 1],
      ['Alder DN 12', STRAIGHT, STRAIGHT, 800, 700, 1],
      ['Elm DN 12', STRAIGHT, STRAIGHT, 800, 740, 1],
      ['Alder DN 12', STRAIGHT, 'Straight', 800, 740, 1],
      ['Alder DN 25', 'Birch flange DN 25', 'Birch flange DN 25', 800, 680, 1],
    ],
    taken: [`2: Alder DN 12 [${STRAIGHT} + ${STRAIGHT}], overall 800 mm, cut 740 mm, × 1`],
    leftOut: ['3 stop: disagrees', '4 stop: Elm DN 12', '5 stop: Straight', '6 stop: families differ'],
  },
  {
    name: 'errors in the place of couplings are no plain hose',
    rows: [
      ['Hose', 'Fitting A', 'Fitting B', 'Length (mm)', 'Qty'],
      ['Alder DN 12', { formula: '=X1', value: { error: '#N/A' } }, { formula: '=X2', value: { error: '#N/A' } }, 800, 1],
      ['Alder DN 12', '', '', 800, 1],
    ],
    taken: ['3: Alder DN 12, cut 800 mm, × 1'],
    leftOut: ['2 stop: fitting A is #N/A'],
  },
];

test.each(WITH_PARTS)('with a catalogue: $name', async from => {
  const workbook = await openSheet('jobs', 'Jobs', from);
  const { lines, report, questions } = await readJobs(workbook, STEP_OF_1_MM, undefined, CATALOGUE);
  expect(lines.filter(isReady).map(toldLine)).toEqual(from.taken);
  expectLeftOut(report.leftOut, from.leftOut ?? []);
  expectQuestions(questions, from.asks ?? []);
});

test('a table of the host’s own has its own range: its row of totals and what is typed below are none of it', async () => {
  const rows: FakeCell[][] = [
    ['Hose', 'Cut length (mm)', 'Qty'],
    ['Alder DN 12', 640, 2],
    ['Larch DN 16', 650, 1],
    ['Total', { formula: '=SUBTOTAL(109,[Cut length (mm)])', value: 1290 }, 3],
    ['Larch DN 16', 700, 1],
  ];
  const standing = await openSheet('jobs', 'Jobs', { name: '', rows, taken: [] });
  const own = { ...standing, tables: async () => [{ sheet: 'Jobs', address: 'A1:C3', name: 'Lines', hasTotals: true }] };
  const { lines, report } = await readJobs(own, STEP_OF_1_MM);
  expect(lines.map(toldLine)).toEqual(['2: Alder DN 12, cut 640 mm, × 2', '3: Larch DN 16, cut 650 mm, × 1']);
  expectLeftOut(report.leftOut, ['5 below']);
});
