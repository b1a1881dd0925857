import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const WISHES = { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } };

/** An invented list in groups: the hose stands once above its lines. */
const GROUPED: readonly (readonly FakeCell[])[] = [
  ['Pos', 'Hose', 'Qty', 'Cut length (mm)', 'Wanted for'],
  ['Alder DN 12', '', '', '', ''],
  [1, '', 2, 500, 'Topper'],
  [2, '', 1, 900, 'Loader'],
  ['', 'Rowan DN 8', '', '', ''],
  [3, '', 4, 700, 'Boom'],
  [4, 'Larch DN 10', 4, 710, 'Boom'],
  [5, '', 1, 720, 'Boom'],
];

async function read(rows: readonly (readonly FakeCell[])[], answer?: string) {
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A1' });
  const before = await readJobs(workbook, WISHES);
  if (answer === undefined) return before;
  const [question] = before.questions;
  await rememberAnswer(workbook, 'jobs', 'Jobs', question!.asked, question!.heading, answer);
  return readJobs(workbook, WISHES);
}
const message = ({ lines }: Awaited<ReturnType<typeof read>>) =>
  lines.map(({ row, hose, standing }) =>
    [row, hose, standing.kind === 'stop' ? standing.reasons.join('; ') : standing.kind].join(' | '),
  );

test('a hose that stands alone above rows without one is asked about once, and nothing is guessed before', async () => {
  const jobs = await read(GROUPED);
  expect(jobs.questions).toMatchObject([
    {
      asked: 'meaning',
      sentence:
        'Rows 3–4 have no hose; row 2 holds only “Alder DN 12”. Are they all of that hose? The same goes for row 6 below row 5, “Rowan DN 8”.',
      choices: [{ label: 'Yes, each below its hose' }, { label: 'No, leave them out' }],
    },
  ]);
  expect(message(jobs)).toEqual([
    '3 |  | hose is blank, and row 2 holds only “Alder DN 12”: say whether it is of that hose',
    '4 |  | hose is blank, and row 2 holds only “Alder DN 12”: say whether it is of that hose',
    '6 |  | hose is blank, and row 5 holds only “Rowan DN 8”: say whether it is of that hose',
    '7 | Larch DN 10 | ready',
    '8 |  | hose is blank: fill it in',
  ]);
  expect(jobs.report.leftOut.filter(({ reason }) => reason === 'remark').map(({ row }) => row)).toEqual([2, 5]);
});

test('yes gives each row the hose above it; a row behind one with a hose of its own stays blank', async () => {
  const jobs = await read(GROUPED, 'yes');
  expect(jobs.questions).toEqual([]);
  expect(message(jobs)).toEqual([
    '3 | Alder DN 12 | ready',
    '4 | Alder DN 12 | ready',
    '6 | Rowan DN 8 | ready',
    '7 | Larch DN 10 | ready',
    '8 |  | hose is blank: fill it in',
  ]);
  expect(jobs.lines.map(({ places }) => places.hose)).toEqual(['A2', 'A2', 'B5', 'B7', undefined]);
});

test('no leaves the rows out; another hose above them is asked about again', async () => {
  const jobs = await read(GROUPED, 'no');
  expect(jobs.questions).toEqual([]);
  expect(message(jobs).filter(line => /hose is blank: fill it in/.test(line))).toHaveLength(4);
  const { workbook } = fakeWorkbook({ Jobs: GROUPED }, { sheet: 'Jobs', address: 'A1' });
  const [question] = (await readJobs(workbook, WISHES)).questions;
  await rememberAnswer(workbook, 'jobs', 'Jobs', question!.asked, question!.heading, 'yes');
  await workbook.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'A2' }, values: [['Alder DN 16']] }]);
  expect((await readJobs(workbook, WISHES)).questions).toHaveLength(1);
});

test.each([
  ['a day', 'Monday 5'],
  ['an order', 'Order B-41'],
  ['a remark', 'see the drawing'],
  ['a place', 'Harvester'],
])('%s above rows without a hose is none: %s', async (_, text) => {
  const jobs = await read([GROUPED[0]!, [text, '', '', '', ''], [1, '', 2, 500, 'Topper']]);
  expect(jobs.questions).toEqual([]);
  expect(message(jobs)).toEqual(['3 |  | hose is blank: fill it in']);
});
