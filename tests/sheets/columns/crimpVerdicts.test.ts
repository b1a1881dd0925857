import { openReadings } from './crimpBook';

type Book = Awaited<ReturnType<typeof openReadings>>;
let book: Book;
afterEach(() => book.dispose());

const open = async (...args: Parameters<typeof openReadings>) => (book = await openReadings(...args));
const four = (value: number) => [value, value, value, value];
const PAIR = ['Hazel', 'Straight'];
const ONE_SPREAD = 'One formula for all rows takes one largest spread: choose one formula a row under Settings.';
const BOTH = [false, true] as const;

/** Verdicts of the new columns, by their headings. */
const verdictsIn = (columns: Record<string, readonly unknown[]>) =>
  Object.fromEntries(Object.entries(columns).filter(([heading]) => heading.startsWith('Verdict')));

describe.each(BOTH)('with a catalogue: %s', hasCatalogue => {
  // A: 25.02 − 24.90 = +0.12 > 0.10. B: 25.06 − 24.90 = +0.16 > 0.10. Target B lies between the two blocks.
  test('both ends in a row are judged each by its own target', async () => {
    const heads = (end: string) => [`Target ${end} (mm)`, `Tol ${end} (mm)`, ...[1, 2, 3, 4].map(nth => `Reading ${end}${nth}`)];
    await open(
      [
        ['Job', 'Hose', 'Coupling A', 'Coupling B', ...heads('A'), ...heads('B')],
        [1, 'Hazel', 'Straight', 'Elbow', 24.9, 0.1, ...four(25.02), 24.9, 0.1, ...four(25.06)],
      ],
      { hasCatalogue },
    );
    expect(await book.analysis()).toEqual(['2 A LOOSE', '2 B LOOSE']);
    const columns = await book.add();
    expect(verdictsIn(columns)).toEqual({ 'Verdict A': ['LOOSE'], 'Verdict B': ['LOOSE'] });
    expect(columns).toMatchObject({ 'Deviation A (mm)': [0.12], 'Deviation B (mm)': [0.16] });
  });

  // A: (24.80 + 24.80 + 24.80 + 24.78)/4 = 24.795, −0.105 < −0.10. B: +0.12. Over all eight: 24.9075, +0.0075.
  test('two blocks that go by one target are not averaged', async () => {
    await open(
      [
        ['Job', 'Hose', 'Coupling', 'Target (mm)', 'Tol (mm)', 'A1', 'A2', 'A3', 'A4', 'B1', 'B2', 'B3', 'B4'],
        [1, ...PAIR, 24.9, 0.1, 24.8, 24.8, 24.8, 24.78, ...four(25.02)],
      ],
      { hasCatalogue },
    );
    expect(await book.analysis()).toEqual(['2 A TIGHT', '2 B LOOSE']);
    expect(verdictsIn(await book.add())).toEqual({ 'Verdict A': ['TIGHT'], 'Verdict B': ['LOOSE'] });
  });

  // Mean (25.06 + 25.06 + 25.07 + 25.07)/4 = 25.065 > 25.02.
  test('limits are no readings', async () => {
    await open(
      [
        ['Hose', 'Fitting', 'Lower limit (mm)', 'Upper limit (mm)', 'N-S (mm)', 'E-W (mm)', 'NE-SW (mm)', 'NW-SE (mm)'],
        [...PAIR, 24.78, 25.02, 25.06, 25.06, 25.07, 25.07],
      ],
      { hasCatalogue },
    );
    expect(await book.analysis()).toEqual(['2 LOOSE']);
    // 25.065 − (24.78 + 25.02)/2 = 25.065 − 24.90 = 0.165.
    expect(await book.add()).toMatchObject({ Verdict: ['LOOSE'], 'Deviation (mm)': [0.165] });
  });

  // 24.77 is below 24.80; 25.08 is within 24.80 … 25.10, though 0.18 from the nominal.
  test('limits that are not the same distance from the nominal are judged by as they stand', async () => {
    await open(
      [
        ['Hose', 'Fitting', 'Nominal (mm)', 'Min dia (mm)', 'Max dia (mm)', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
        [...PAIR, 24.9, 24.8, 25.1, ...four(24.77)],
        [...PAIR, 24.9, 24.8, 25.1, ...four(25.08)],
      ],
      { hasCatalogue },
    );
    expect(await book.analysis()).toEqual(['2 TIGHT', '3 IN SPEC']);
    expect(verdictsIn(await book.add())).toEqual({ Verdict: ['TIGHT', 'IN SPEC'] });
  });

  // Mean (24.98 + 24.98 + 24.99 + 24.97)/4 = 24.98 > 24.95; by the catalogue's 24.90 ± 0.12 it would be in spec.
  test('the limits of the sheet count before the catalogue, and are not outranked by columns that were added', async () => {
    const heads = ['Lower limit (mm)', 'Upper limit (mm)', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)', 'Dial'];
    await open(
      [
        ['Hose', 'Fitting', ...heads],
        [...PAIR, 24.85, 24.95, 24.98, 24.98, 24.99, 24.97, 288],
      ],
      { hasCatalogue },
    );
    expect(await book.analysis()).toEqual(['2 LOOSE']);
    expect(Object.keys(await book.add())).toEqual(['Verdict', 'Deviation (mm)']);
    expect(await book.analysis()).toEqual(['2 LOOSE']);
  });

  // A mean of 24.95 lies on the limit (24.85 + 24.95)/2 + (24.95 − 24.85)/2; in binary the half width is 0.0499999999999989.
  test('a mean on a limit of the sheet is in spec', async () => {
    await open(
      [
        ['Hose', 'Fitting', 'Lower limit (mm)', 'Upper limit (mm)', 'R1 (mm)', 'R2 (mm)'],
        [...PAIR, 24.85, 24.95, 24.95, 24.95],
      ],
      { hasCatalogue },
    );
    expect(verdictsIn(await book.add())).toEqual({ Verdict: ['IN SPEC'] });
  });

  // Mean 24.90, spread 25.05 − 24.75 = 0.30 > 0.25.
  test.each(['Max. spread (mm)', 'Max ovality (mm)'])('%s of the sheet makes a crimp OVAL', async heading => {
    await open(
      [
        ['Hose', 'Fitting', 'Target (mm)', 'Tol (mm)', heading, 'R1', 'R2', 'R3', 'R4'],
        [...PAIR, 24.9, 0.12, 0.25, 24.75, 25.05, 24.75, 25.05],
        [...PAIR, 24.9, 0.12, 0.35, 24.75, 25.05, 24.75, 25.05],
      ],
      { hasCatalogue },
    );
    expect(await book.analysis()).toEqual(['2 OVAL', '3 IN SPEC']);
    expect((await book.lacking('qa', 'column'))['Verdict']).toBe(ONE_SPREAD);
    expect(verdictsIn(await book.add('qa', 'row'))).toEqual({ Verdict: ['OVAL', 'IN SPEC'] });
  });

  // The mean 25.0 lies 0.1 above 24.9, where ±0.05 is allowed above the table.
  test('target and tolerance above the table count before the catalogue', async () => {
    await open(
      [
        ['Target (mm)', 24.9],
        ['Tolerance (mm)', 0.05],
        [],
        ['Hose', 'Fitting', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
        [...PAIR, ...four(25)],
      ],
      { hasCatalogue, selected: 'A5' },
    );
    expect(await book.analysis()).toEqual(['5 LOOSE']);
    expect(Object.keys(await book.add())).toEqual(['Verdict', 'Deviation (mm)']);
  });

  test.each(['Lower limit (in)', 'Tol (in)'])('%s beside readings in mm is refused with the reason', async heading => {
    const isTolerance = heading.startsWith('Tol');
    await open(
      [
        ['Hose', 'Fitting', heading, isTolerance ? 'Target (mm)' : 'Upper limit (mm)', 'R1 (mm)', 'R2 (mm)'],
        [...PAIR, isTolerance ? 0.004 : 0.978, 24.95, 24.95, 24.95],
      ],
      { hasCatalogue },
    );
    expect((await book.lacking())['Verdict']).toBe(
      `The readings are in mm, column ${heading} is in inches: they must be the same.`,
    );
  });
});

describe.each(['cell', 'row', 'column'] as const)('in the form %s', form => {
  // A: +0.12 and −0.12 of 24.9 ± 0.1. B: +0.16 and 0.
  test('both ends are judged', async () => {
    await open([
      ['Job', 'Hose', 'Target A (mm)', 'Tol A (mm)', 'A1', 'A2', 'Target B (mm)', 'Tol B (mm)', 'B1', 'B2'],
      [1, 'Hazel', 24.9, 0.1, 25.02, 25.02, 24.9, 0.1, 25.06, 25.06],
      [2, 'Hazel', 24.9, 0.1, 24.78, 24.78, 25.4, 0.1, 25.4, 25.4],
    ]);
    expect(verdictsIn(await book.add('qa', form))).toEqual({
      'Verdict A': ['LOOSE', 'TIGHT'],
      'Verdict B': ['LOOSE', 'IN SPEC'],
    });
  });

  // 24.98 > 24.95; 24.95 lies on the limit; 24.84 < 24.85.
  test('limits are judged by', async () => {
    await open([
      ['Lower limit (mm)', 'Upper limit (mm)', 'R1 (mm)', 'R2 (mm)'],
      [24.85, 24.95, 24.98, 24.98],
      [24.85, 24.95, 24.95, 24.95],
      [24.85, 24.95, 24.84, 24.84],
    ]);
    expect(verdictsIn(await book.add('qa', form))).toEqual({ Verdict: ['LOOSE', 'IN SPEC', 'TIGHT'] });
  });

  // The width 0.2 is ±0.1: +0.12 is too much, +0.1 lies on the limit.
  test('a tolerance from limit to limit is halved', async () => {
    await open([
      ['Target (mm)', 'Tolerance width (mm)', 'R1 (mm)', 'R2 (mm)'],
      [24.9, 0.2, 25.02, 25.02],
      [24.9, 0.2, 25, 25],
    ]);
    expect(await book.analysis()).toEqual(['2 LOOSE', '3 IN SPEC']);
    expect(verdictsIn(await book.add('qa', form))).toEqual({ Verdict: ['LOOSE', 'IN SPEC'] });
  });

  // 0.25 mm are 0.00984 in. Means 0.980; spreads 0.985 − 0.975 = 0.010 and 0.984 − 0.976 = 0.008.
  test("readings in inches are held against the catalogue's largest spread in mm", async () => {
    await open(
      [
        ['Hose', 'Fitting', 'Target (in)', 'Tol (in)', 'R1 (in)', 'R2 (in)'],
        [...PAIR, 0.98, 0.005, 0.975, 0.985],
        [...PAIR, 0.98, 0.005, 0.976, 0.984],
      ],
      { hasCatalogue: true },
    );
    expect(await book.analysis()).toEqual(['2 OVAL', '3 IN SPEC']);
    expect(verdictsIn(await book.add('qa', form))).toEqual({ Verdict: ['OVAL', 'IN SPEC'] });
  });
});

// The mean of A is 0.12 too large: at 0.02 mm a digit 6 digits more; that of B is 0.16 too large: 8 digits more.
test('the next dial is that of each end', async () => {
  await open([
    ['Dial A', 'Dial B', 'Step (mm)', 'Target (mm)', 'Tol (mm)', 'A1 (mm)', 'A2 (mm)', 'B1 (mm)', 'B2 (mm)'],
    [288, 300, 0.02, 24.9, 0.1, 25.02, 25.02, 25.06, 25.06],
  ]);
  expect(await book.add()).toMatchObject({ 'Next dial A': [294], 'Next dial B': [308] });
});

// Straight: mean 24.90, spread 0.30 > 0.25. Elbow: mean 25.40, spread 0.30 < 0.40.
test.each(['cell', 'row'] as const)("the catalogue's largest spread counts, a row by its own pair, form %s", async form => {
  await open(
    [
      ['Hose', 'Fitting', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
      [...PAIR, 24.75, 25.05, 24.75, 25.05],
      ['Hazel', 'Elbow', 25.25, 25.55, 25.25, 25.55],
    ],
    { hasCatalogue: true },
  );
  expect(await book.analysis()).toEqual(['2 OVAL', '3 IN SPEC']);
  expect((await book.lacking('qa', 'column'))['Verdict']).toBe(ONE_SPREAD);
  expect(verdictsIn(await book.add('qa', form))).toEqual({ Verdict: ['OVAL', 'IN SPEC'] });
});

// Appended: Elbow with the spread 0.30 that fits its 0.40, Straight with one that does not fit its 0.25, and a pair that no row above has.
test('a row appended below takes the largest spread of its own pair, and no formula of another', async () => {
  const head = ['Hose', 'Fitting', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'];
  const elbow = ['Hazel', 'Elbow', 25.25, 25.55, 25.25, 25.55];
  await open([head, [...PAIR, ...four(24.9)], elbow], { hasCatalogue: true });
  await book.add();
  await book.append([elbow, [...PAIR, 24.75, 25.05, 24.75, 25.05], ['Hazel', 'Bend', ...four(25)]]);
  expect(await book.fill()).toMatchObject({ Verdict: ['IN SPEC', 'IN SPEC', 'IN SPEC', 'OVAL', ''] });
});

test('one formula for all rows takes the largest spread that all pairs share', async () => {
  await open(
    [
      ['Hose', 'Fitting', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
      [...PAIR, 24.75, 25.05, 24.75, 25.05],
      [...PAIR, ...four(24.9)],
    ],
    { hasCatalogue: true },
  );
  expect(verdictsIn(await book.add('qa', 'column'))).toEqual({ Verdict: ['OVAL', 'IN SPEC'] });
});

// By the catalogue's 24.9 ± 0.12 both means fit: A 24.9, B 25.0; the spread of B is 0.3 > 0.25.
test('one coupling of both ends serves for both verdicts', async () => {
  await open(
    [
      ['Hose', 'Coupling', 'A1 (mm)', 'A2 (mm)', 'B1 (mm)', 'B2 (mm)'],
      [...PAIR, 24.9, 24.9, 24.85, 25.15],
    ],
    { hasCatalogue: true },
  );
  expect(await book.analysis()).toEqual(['2 A IN SPEC', '2 B OVAL']);
  expect(verdictsIn(await book.add())).toEqual({ 'Verdict A': ['IN SPEC'], 'Verdict B': ['OVAL'] });
});

describe("what the bench adds does not outrank the sheet's own", () => {
  // Mean 24.98: above 24.95, within the catalogue's 24.90 ± 0.12.
  test.each([
    ['limits', ['Lower limit (mm)', 'Upper limit (mm)'], [24.85, 24.95]],
    ['a loose heading', ['Nominal (mm)', 'Tol (mm)'], [24.8, 0.1]],
  ])('%s', async (_, heads, values) => {
    await open(
      [
        ['Hose', 'Fitting', ...heads, 'R1 (mm)', 'R2 (mm)'],
        [...PAIR, ...values, 24.98, 24.98],
      ],
      { hasCatalogue: true },
    );
    expect(await book.analysis()).toEqual(['2 LOOSE']);
    expect(Object.keys(await book.add('bench'))).toContain('Crimp diameter (mm)');
    expect(await book.analysis()).toEqual(['2 LOOSE']);
    expect(verdictsIn(await book.add())).toEqual({ Verdict: ['LOOSE'] });
  });
});

describe('refused with the reason', () => {
  test.each([
    [
      'readings apart',
      ['Target (mm)', 'Tol (mm)', 'R1 (mm)', 'R2 (mm)', 'Remark', 'R3 (mm)', 'R4 (mm)'],
      [24.9, 0.1, 24.9, 24.9, 'dry', 25.3, 25.3],
      'The readings (columns E, F, H, I) do not lie side by side: move the columns between them.',
    ],
    [
      'one reading an end',
      ['Target (mm)', 'Tol (mm)', 'Reading A (mm)', 'Reading B (mm)'],
      [24.9, 0.1, 24.7, 25.1],
      'The crimps of end A have one reading each: a verdict takes two or more side by side.',
    ],
    [
      'rows of either end beside targets of both',
      ['End', 'Target A (mm)', 'Target B (mm)', 'Tol (mm)', 'R1 (mm)', 'R2 (mm)'],
      ['B', 24.9, 25.4, 0.1, 24.9, 24.9],
      'Column End says of which end each row is, and the ends have columns of their own: formulas cannot choose between them. Judge these crimps in QA › Analysis.',
    ],
    [
      'a tolerance each way',
      ['Target (mm)', 'Tol +', 'Tol -', 'R1 (mm)', 'R2 (mm)'],
      [24.9, 0.1, 0.2, 24.9, 24.9],
      'The tolerance is not known: “Tol +” and “Tol -”, one for each way, cannot be used: use two columns of limits instead, the smallest and the largest diameter.',
    ],
  ])('%s', async (_, heads, values, reason) => {
    await open(
      [
        ['Hose', 'Fitting', ...heads],
        [...PAIR, ...values],
      ],
      { hasCatalogue: true },
    );
    expect(Object.values(await book.lacking())).toContain(reason);
    await expect(book.add()).rejects.toThrow('Choose at least one column');
  });

  test('Min and Max that may be the readings’ own wait for an answer', async () => {
    await open([
      ['Hose', 'Fitting', 'Min (mm)', 'Max (mm)', 'R1 (mm)', 'R2 (mm)'],
      [...PAIR, 24.8, 25, 24.9, 24.95],
    ]);
    const { questions } = await book.view();
    expect(questions.map(({ asked }) => asked)).toContain('meaning');
    expect((await book.lacking())['Verdict']).toBe(
      'It is not known whether Min and Max are limits: answer the question about them first.',
    );
  });
});
