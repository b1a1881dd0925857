import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { readJobs, type JobWishes } from '../../../src/sheets/jobs/readJobs';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';

const mm = measureUnit('length', 'mm')!;
const WISHES: JobWishes = { step: { value: new Decimal(1), unit: mm } };

const jobs = (rows: readonly (readonly FakeCell[])[], details: FakeDetails = {}, address = 'A2', wishes = WISHES) => {
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address }, details);
  return readJobs(workbook, wishes);
};
/** Lines as `row: hose, cut length unit, quantity, standing`. */
const message = async (...from: Parameters<typeof jobs>) => {
  const { lines } = await jobs(...from);
  return lines.map(({ row, hose, cutLength, quantity, standing }) => {
    const why = standing.kind === 'stop' ? `stop: ${standing.reasons.join('; ')}` : standing.kind;
    return `${row}: ${hose}, ${cutLength ? `${cutLength.value} ${cutLength.unit.symbol}` : '?'}, ${quantity ?? '?'}, ${why}`;
  });
};
const leftOut = async (...from: Parameters<typeof jobs>) =>
  (await jobs(...from)).report.leftOut.map(({ row, reason }) => `${row} ${reason}`);

describe('units of a heading', () => {
  test.each([
    ['Cut length mm', 'mm'],
    ['Cut length (metres)', 'm'],
    ['Cut length, foot', 'ft'],
    ['Cut length (yd)', 'yd'],
    ['Cut length (″)', 'in'],
  ])('%s', async (heading, unit) => {
    expect(
      await message([
        ['Hose', heading, 'Qty'],
        ['Alder DN 12', 20, 2],
      ]),
    ).toEqual([`2: Alder DN 12, 20 ${unit}, 2, ready`]);
  });

  test('a heading without a unit is asked about, and its rows are refused until it is answered', async () => {
    const rows = [
      ['Hose', 'Cut length', 'Qty'],
      ['Alder DN 12', 48, 2],
    ] as const;
    const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A2' });
    const open = await readJobs(workbook, WISHES);
    expect(open.questions.map(({ sentence }) => sentence)).toEqual(['Column B: Cut length has no unit. Which is it?']);
    expect(open.report.taken).toEqual([]);
    await rememberAnswer(workbook, 'jobs', 'Jobs', 'unit', 'Cut length', 'in');
    const answered = await readJobs(workbook, WISHES);
    expect(answered.questions).toEqual([]);
    expect(answered.lines[0]!.cutLength).toMatchObject({ unit: { symbol: 'in' } });
  });

  test('it takes the unit of the other lengths where all agree', async () => {
    const rows = [
      ['Hose', 'Overall length (in)', 'Cut length', 'Qty'],
      ['Alder DN 12', 50, 48, 2],
    ];
    expect(await message(rows)).toEqual(['2: Alder DN 12, 48 in, 2, ready']);
  });

  test('a unit that nobody knows is asked about', async () => {
    const { questions } = await jobs([
      ['Hose', 'Cut length (klafter)', 'Qty'],
      ['Alder DN 12', 48, 2],
    ]);
    expect(questions.map(({ sentence }) => sentence)).toEqual([
      'Column B: Cut length (klafter): “klafter” is no unit that is known. Which is it?',
    ]);
  });
});

describe('where a table ends', () => {
  const HEAD = ['Line', 'Hose', 'Cut length (mm)', 'Qty'];
  test('a title block above, a total, a remark and notes below are no hose to cut', async () => {
    const rows = [
      ['Jobs of the week', '', '', ''],
      ['Workshop', 'Harvest', '', ''],
      HEAD,
      [1, 'Alder DN 12', 500, 2],
      ['urgent ones below', '', '', ''],
      [2, 'Birch DN 10', 700, 1],
      ['Total', '', 1200, 3],
      ['', '', '', ''],
      ['', '', '', ''],
      ['', '', '', ''],
      ['note', 'check with the yard', 5, 5],
    ];
    expect(await message(rows, {}, 'A4')).toEqual(['4: Alder DN 12, 500 mm, 2, ready', '6: Birch DN 10, 700 mm, 1, ready']);
    expect(await leftOut(rows, {}, 'A4')).toEqual(['5 remark', '7 total', '11 below']);
  });

  test('a second table is read with its own columns', async () => {
    const rows = [
      ['Line', 'Hose', 'Overall length (mm)', 'Cut length (mm)', 'Qty'],
      [1, 'Alder DN 12', 600, 500, 2],
      ['', '', '', '', ''],
      ['Line', 'Hose', 'Cut length (mm)', 'Overall length (mm)', 'Qty'],
      [2, 'Birch DN 10', 700, 800, 1],
    ];
    expect(await message(rows, {}, 'A2')).toEqual(['2: Alder DN 12, 500 mm, 2, ready']);
    expect(await leftOut(rows, {}, 'A2')).toEqual(['5 below']);
    expect(await message(rows, {}, 'A5')).toEqual(['5: Birch DN 10, 700 mm, 1, ready']);
    expect(await message(rows, {}, 'A2:E5')).toEqual(['2: Alder DN 12, 500 mm, 2, ready', '5: Birch DN 10, 700 mm, 1, ready']);
    expect(await message(rows, {}, 'A2', { ...WISHES, take: new Set(['below'] as const) })).toHaveLength(2);
  });
});

describe('a row of units under the headings', () => {
  test.each(['EUR', '€', 'EUR/m', '(USD)', '£ per pc', 'pcs'])('with %s for money is no line', async money => {
    const rows = [
      ['Hose', 'Cut length', 'Qty', 'Price'],
      ['', 'mm', 'pcs', money],
      ['Alder DN 12', 500, 2, 8],
    ];
    const { report } = await jobs(rows);
    expect(report.leftOut.filter(({ reason }) => reason !== 'stop')).toEqual([{ row: 2, reason: 'remark' }]);
  });
});

test.each(['What for', 'Purpose', 'Wanted for'])('%s is the label of a line', async heading => {
  const rows = [
    ['Hose', 'Cut length (mm)', 'Qty', heading],
    ['Alder DN 12', 500, 2, 'Boom'],
  ];
  expect((await jobs(rows)).lines.map(({ label }) => label)).toEqual(['Boom']);
});

test('sets beside pieces per set: the question names both, for they are not multiplied', async () => {
  const rows = [
    ['Hose', 'Cut length (mm)', 'Ref', 'Sets', 'Pcs per set'],
    ['Alder DN 12', 500, 'a', 2, 3],
  ];
  expect((await jobs(rows)).questions.map(({ sentence }) => sentence)).toEqual([
    'No column says how many. Is D: Sets the quantity? Whole numbers are in E: Pcs per set, too: they are not multiplied with it.',
  ]);
});

describe('rows that are not to be cut', () => {
  const HEAD = ['Hose', 'Cut length (mm)', 'Qty', 'Status'];
  const rows = [
    HEAD,
    ['Alder DN 12', 500, 2, ''],
    ['Alder DN 12', 600, 2, 'cut'],
    ['Alder DN 12', 700, 2, 'planned'],
    ['Alder DN 12', 800, 2, 'on hold'],
    ['Alder DN 12', 900, 0, ''],
  ];
  test('hidden, done, planned, held and unwanted ones are left out and told', async () => {
    expect(await leftOut(rows, { hiddenRows: { Jobs: [1] } })).toEqual([
      '2 hidden',
      '3 done',
      '4 planned',
      '5 stop',
      '6 none wanted',
    ]);
  });
  test('status words that nobody knows are named with their rows: their lines are taken until somebody leaves them out', async () => {
    const own = [
      HEAD,
      ['Alder DN 12', 500, 2, 'packed'],
      ['Alder DN 12', 600, 2, 'Packed'],
      ['Alder DN 12', 700, 2, 'sent 3 Nov'],
      ['Alder DN 12', 800, 2, 'rush'],
      ['Alder DN 12', 900, 2, 'cut: 1 of 2'],
    ];
    const { workbook } = fakeWorkbook({ Jobs: own }, { sheet: 'Jobs', address: 'A2' });
    const open = await readJobs(workbook, WISHES);
    expect(open.report.taken).toEqual([2, 3, 4, 5, 6]);
    expect(open.questions.map(({ sentence }) => sentence)).toEqual([
      '“packed” (2 rows) is no status that is known: these lines are planned.',
      '“sent 3 Nov” (1 row) is no status that is known: these lines are planned.',
    ]);
    await rememberAnswer(workbook, 'jobs', 'Jobs', 'meaning', open.questions[0]!.heading, 'done');
    await rememberAnswer(workbook, 'jobs', 'Jobs', 'meaning', open.questions[1]!.heading, 'open');
    const answered = await readJobs(workbook, WISHES);
    expect(answered.questions).toEqual([]);
    expect(answered.report.taken).toEqual([4, 5, 6]);
    expect(answered.report.leftOut).toMatchObject([
      { row: 2, reason: 'done' },
      { row: 3, reason: 'done' },
    ]);
    expect((await readJobs(workbook, { ...WISHES, take: new Set(['done'] as const) })).report.taken).toHaveLength(5);
  });
  test('many such words are asked about together', async () => {
    const words = ['packed', 'collected', 'posted', 'gone', 'handed over'];
    const { workbook } = fakeWorkbook(
      { Jobs: [HEAD, ...words.map(word => ['Alder DN 12', 500, 2, word])] },
      { sheet: 'Jobs', address: 'A2' },
    );
    const [together, ...others] = (await readJobs(workbook, WISHES)).questions;
    expect(others).toEqual([]);
    await rememberAnswer(workbook, 'jobs', 'Jobs', 'meaning', together!.heading, 'done');
    expect((await readJobs(workbook, WISHES)).report.taken).toEqual([]);
  });
  test('a tick takes those that may be taken', async () => {
    const wishes: JobWishes = { ...WISHES, take: new Set(['hidden', 'done', 'planned'] as const) };
    const { report } = await jobs(rows, { hiddenRows: { Jobs: [1] } }, 'A2', wishes);
    expect(report.taken).toEqual([2, 3, 4]);
  });
});

describe('merged cells', () => {
  const rows = [
    ['Hose', 'Cut length (mm)', 'Qty'],
    ['Alder DN 12', 500, 2],
    ['', 600, 3],
  ];
  test('a merged hose holds for all its rows', async () => {
    expect(await message(rows, { merges: { Jobs: ['A2:A3'] } })).toEqual([
      '2: Alder DN 12, 500 mm, 2, ready',
      '3: Alder DN 12, 600 mm, 3, ready',
    ]);
  });
  test('a merged quantity is refused with its rows', async () => {
    const merged = [rows[0]!, ['Alder DN 12', 500, 2], ['Alder DN 12', 600, '']];
    const lines = await message(merged, { merges: { Jobs: ['C2:C3'] } });
    expect(lines[0]).toMatch(/stop: quantity is merged over rows 2 to 3/);
    expect(lines[1]).toMatch(/stop: quantity is merged over rows 2 to 3/);
  });
});

test('a cell formatted as a date is no length', async () => {
  const rows = [
    ['Hose', 'Cut length (mm)', 'Qty'],
    ['Alder DN 12', 46000, 2],
  ];
  expect(await message(rows, { formats: { Jobs: { B2: 'dd/mm/yyyy' } } })).toEqual([
    '2: Alder DN 12, ?, 2, stop: cut length is a date: the sheet made a date of what was typed; set the column to text and type it again',
  ]);
});

test('decimal commas: unmistakable ones make 1,250 decimal, else one question a column', async () => {
  const HEAD = ['Hose', 'Cut length (m)', 'Qty'];
  expect(await message([HEAD, ['Alder DN 12', '1,250', 1], ['Alder DN 12', '0,75', 1]])).toEqual([
    '2: Alder DN 12, 1.25 m, 1, ready',
    '3: Alder DN 12, 0.75 m, 1, ready',
  ]);
  const { questions, report } = await jobs([HEAD, ['Alder DN 12', '1,250', 1]]);
  expect(questions).toMatchObject([{ asked: 'comma', sentence: 'Column B: Cut length (m) has 1,250: is that 1.250 or 1250?' }]);
  expect(report.taken).toEqual([]);
});

test('a cut length that disagrees with overall length less cut-offs is a STOP', async () => {
  const rows = [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall (mm)', 'Cut-off A (mm)', 'Cut-off B (mm)', 'Cut length (mm)', 'Qty'],
    ['Alder DN 12', 'x', 'y', 3240, 40, 50, 1, 5],
    ['Alder DN 12', 'x', 'y', 3240, 40, 50, 3150, 5],
  ];
  const [first, second] = await message(rows);
  expect(first).toMatch(/stop: cut length 1 mm disagrees with overall length less cut-offs, 3150 mm/);
  expect(second).toMatch(/ready$/);
});

test('hoses alone are lines; a single coupling is asked about', async () => {
  const HEAD = ['Hose', 'End 1', 'End 2', 'Length (mm)', 'Qty'];
  const rows = [HEAD, ['Alder DN 12', '', '', 900, 1], ['Alder DN 12', 'x', '', 900, 1]];
  const [alone, one] = await message(rows);
  expect(alone).toBe('2: Alder DN 12, 900 mm, 1, ready');
  expect(one).toMatch(/only one coupling is named/);
});

test('a hose in a heading Machine is what the hose is for, unless its values are crimpers', async () => {
  const rows = [
    ['Hose', 'Machine', 'Cut length (mm)', 'Qty'],
    ['Alder DN 12', 'Beet cleaner', 500, 2],
  ];
  const { lines } = await jobs(rows);
  expect(lines[0]).toMatchObject({ label: 'Beet cleaner', crimper: '' });
});

test('a column Cut beside Cut length is none; alone it is the length to cut', async () => {
  const ticked = [
    ['Cut', 'Hose', 'Cut length (mm)', 'Qty'],
    ['☐', 'Alder DN 12', 500, 2],
  ];
  expect(await message(ticked)).toEqual(['2: Alder DN 12, 500 mm, 2, ready']);
  const alone = [
    ['Hose', 'Cut (mm)', 'Qty'],
    ['Alder DN 12', 500, 2],
  ];
  expect(await message(alone)).toEqual(['2: Alder DN 12, 500 mm, 2, ready']);
});

test('a line of units under the headings says what the columns are in, and is no line', async () => {
  const rows = [
    ['Hose', 'Cut length', 'Overall', 'Qty'],
    ['', 'in', '[mm]', 'pcs'],
    ['Alder DN 12', 20, 600, 2],
  ];
  expect(await message(rows)).toEqual(['3: Alder DN 12, 20 in, 2, ready']);
  expect(await leftOut(rows)).toEqual(['2 remark']);
});

test('a heading that asks (Done?) is read as its words: lines that are done are not cut again', async () => {
  const rows = [
    ['Hose', 'Cut length (mm)', 'Qty', 'Done?'],
    ['Alder DN 12', 500, 2, '✓'],
    ['Alder DN 12', 600, 2, 'no'],
    ['Alder DN 12', 700, 2, true],
    ['Alder DN 12', 800, 2, false],
  ];
  expect(await leftOut(rows)).toEqual(['2 done', '4 done']);
});

test('ends by number are ends, where both numbers head a column; a number alone says nothing', async () => {
  const rows = [
    [
      'Hose',
      'Fitting 1',
      'Fitting 2',
      'Qty',
      'Cut length (mm)',
      'Die 1',
      'Crimp OD 1 (mm)',
      'Die 2',
      'Crimp OD 2 (mm)',
      'Ferrule 1',
    ],
    ['Alder DN 12', 'cone', 'cone 90°', 1, 500, 'D26', 27.35, 'D28', 28.1, 'F'],
  ];
  const [line] = (await jobs(rows)).lines;
  expect(line!.ends.map(({ die, target, ferrule }) => [die, target?.value.toString(), ferrule])).toEqual([
    ['D26', '27.35', ''],
    ['D28', '28.1', ''],
  ]);
});

test.each([
  ['hose', [{ formula: '=Parts!A9', value: { error: '#N/A' } }, 'Alder cone DN 12', 'Alder cone DN 12', 900, 2]],
  ['fitting A', ['Alder DN 12', { formula: '=Parts!A9', value: { error: '#N/A' } }, 'Alder cone DN 12', 900, 2]],
  ['fitting B', ['Alder DN 12', 'Alder cone DN 12', { formula: '=Parts!A9', value: { error: '#N/A' } }, 900, 2]],
])('an error value in place of the %s stops the line: it is no blank', async (part, row) => {
  const rows = [['Hose', 'Fitting A', 'Fitting B', 'Cut length (mm)', 'Qty'], row] as FakeCell[][];
  expect(await message(rows)).toEqual([expect.stringMatching(new RegExp(`stop: .*${part} is #N/A`))]);
});

describe('a column of cut lengths in which nothing stands yet', () => {
  const HEADINGS = ['Item', 'Hose', 'Coupling A', 'Coupling B', 'OAL (mm)', 'Qty', 'Cut length (mm)'];
  const ROW = ['1', 'Alder DN 12', 'Alder cone', 'Alder elbow', 1250, 4];

  test('is as if it were not there: couplings and overall length say what to cut', async () => {
    const { lines } = await jobs([HEADINGS, [...ROW, '']]);
    expect(lines.map(({ cutLength, overall, standing }) => [cutLength, `${overall!.value}`, standing.kind])).toEqual([
      [undefined, '1250', 'ready'],
    ]);
  });

  test('gives way to the one that was added beside it', async () => {
    expect(
      await message([
        [...HEADINGS, 'Cut length (mm) 2'],
        [...ROW, '', 1178.6],
      ]),
    ).toEqual(['2: Alder DN 12, 1178.6 mm, 4, ready']);
  });

  test('without couplings is to be filled in, and so is one of which some rows are filled', async () => {
    const blank = 'stop: cut length is blank: fill it in';
    expect(
      await message([
        ['Hose', 'OAL (mm)', 'Qty', 'Cut length (mm)'],
        ['Alder DN 12', 1250, 4, ''],
      ]),
    ).toEqual([`2: Alder DN 12, ?, 4, ${blank}`]);
    expect(await message([HEADINGS, [...ROW, 1178], [...ROW, '']])).toEqual([
      '2: Alder DN 12, 1178 mm, 4, ready',
      `3: Alder DN 12, ?, 4, ${blank}`,
    ]);
  });
});
