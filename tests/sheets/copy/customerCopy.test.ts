import { copyChanges } from '../../../src/sheets/copy/copyChanges';
import { readCopySource } from '../../../src/sheets/copy/copySource';
import type { CopyWishes } from '../../../src/sheets/copy/copyWishes';
import { NothingToCopy, planCopy } from '../../../src/sheets/copy/planCopy';
import type { CopiedSheet, CopiedWorkbook } from '../../../src/workbook/copiedWorkbook';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { openSample } from '../quote/openSample';

const CUSTOMER: CopyWishes = {
  sheets: [],
  kind: 'values',
  withCosts: false,
  withParts: false,
  target: 'file',
  today: '2026-11-29',
};

const f = (formula: string, value: FakeCell): FakeCell => ({ formula, value: value as never });

/** A price sheet with a margin above it, costs in it, and a column reckoned from the cost. */
const PRICES: FakeCell[][] = [
  ['Prices for the harvest'],
  ['Margin', 0.4],
  ['Delivery', '2 weeks'],
  [],
  ['Line', 'Hose', 'Fitting A', 'Quantity', 'Hose cost', 'Fittings', 'Labour', 'Total', 'Batch', 'Price each', 'Sum'],
  [
    1,
    'Alder DN 12',
    'Alder cone',
    4,
    f('=HOSE.UNITCOST(Catalogue,B6,C6,C6,500,D6)', 5),
    8,
    9,
    22,
    f('=H6*D6', 88),
    f('=HOSE.SELLPRICE(H6,$B$2)', 36.67),
    f('=J6*D6', 146.68),
  ],
  [
    2,
    'Alder DN 25',
    'Alder cone',
    1,
    f('=HOSE.UNITCOST(Catalogue,B7,C7,C7,500,D7)', { error: '#N/A' }),
    '',
    '',
    '',
    f('=H7*D7', 0),
    f('=HOSE.SELLPRICE(H7,$B$2)', ''),
    f('=J7*D7', { error: '#VALUE!' }),
  ],
];

const sheetOf = (copy: CopiedWorkbook, name: string): CopiedSheet => copy.sheets.find(sheet => sheet.name === name)!;
const valuesOf = ({ cells }: CopiedSheet) =>
  cells.map(line => line.map(({ value }) => (typeof value === 'object' ? value.error : value)));

async function planned(sheets: Record<string, FakeCell[][]>, wishes: Partial<CopyWishes> = {}, details = {}) {
  const { workbook } = fakeWorkbook(sheets, { sheet: Object.keys(sheets)[0]!, address: 'A1' }, details);
  return planCopy(await readCopySource(workbook), { ...CUSTOMER, sheets: Object.keys(sheets), ...wishes });
}

test('a customer sees prices, no costs and no margin; the person who passes it on is told what was left out', async () => {
  const { copy, leftOut, formulas } = await planned({ Prices: PRICES });
  const values = valuesOf(sheetOf(copy, 'Prices'));
  expect(values[1]!.slice(0, 2)).toEqual(['', '']);
  expect(values[4]).toEqual(['Line', 'Hose', 'Fitting A', 'Quantity', '', '', '', '', '', 'Price each', 'Sum']);
  expect(values[5]).toEqual([1, 'Alder DN 12', 'Alder cone', 4, '', '', '', '', '', 36.67, 146.68]);
  // An error of the person's own formula keeps its code.
  expect(values[6]!.at(-1)).toBe('#VALUE!');
  expect(formulas).toBe(0);
  expect(leftOut.join(' ')).toMatch(/Prices!A2 \(Margin\).*Hose cost.*Look the copy through/);
  // What was left out is said to the person in the pane; the copy does not speak of it.
  expect(JSON.stringify(copy)).not.toMatch(/Margin|Hose cost|Labour/);
});

test('with costs and margins the copy has them', async () => {
  const { copy, leftOut } = await planned({ Prices: PRICES }, { withCosts: true });
  expect(valuesOf(sheetOf(copy, 'Prices'))[5]).toEqual([1, 'Alder DN 12', 'Alder cone', 4, 5, 8, 9, 22, 88, 36.67, 146.68]);
  expect(leftOut).toEqual([]);
});

test('plain formulas without costs: what stands on a cost holds its value, is coloured and listed', async () => {
  const { copy, kept } = await planned({ Prices: PRICES }, { kind: 'formulas' });
  const [row] = sheetOf(copy, 'Prices').cells.slice(5);
  expect(row![9]).toMatchObject({ value: 36.67, looks: 'kept' });
  expect(row![9]!.formula).toBeUndefined();
  expect(row![10]).toMatchObject({ value: 146.68, formula: '=J6*D6' });
  expect(kept).toContainEqual({ sheet: 'Prices', address: 'J6:J7', reason: 'SELLPRICE: it reads cells that were left out' });
  expect(valuesOf(copy.sheets[0]!).flat()).toContain('SELLPRICE: it reads cells that were left out');
});

test('hidden rows are copied empty into values, and stay hidden with what they hold among plain formulas', async () => {
  const sheets = {
    Jobs: [
      ['Line', 'Note'],
      [1, 'seen'],
      [2, 'not for the customer'],
    ] as FakeCell[][],
  };
  const hidden = { hiddenRows: { Jobs: [2] } };
  const { copy, leftOut } = await planned(sheets, {}, hidden);
  expect(valuesOf(sheetOf(copy, 'Jobs'))[2]).toEqual(['', '']);
  expect(sheetOf(copy, 'Jobs').hiddenRows).toEqual([2]);
  expect(leftOut).toEqual(['Contents of hidden rows: Jobs (1).']);
  const plain = await planned(sheets, { kind: 'formulas' }, hidden);
  expect(valuesOf(sheetOf(plain.copy, 'Jobs'))[2]).toEqual([2, 'not for the customer']);
});

test('formulas that only some programs know, and names of other sheets, become values with the reason', async () => {
  const sheets = {
    Jobs: [
      [
        f('=LET(a,2,a*3)', 6),
        f('=Costs!A1*2', 10),
        f('=SUM(A1:B1)', 16),
        f('=@A1', 6),
        f('=HOSE.PRESSUREDROP(60,12,1,46,"metric")', 0.4),
      ],
    ] as FakeCell[][],
    Costs: [[5]] as FakeCell[][],
  };
  const { copy, kept } = await planned(sheets, { kind: 'formulas', sheets: ['Jobs'] });
  expect(sheetOf(copy, 'Jobs').cells[0]!.map(({ formula }) => formula)).toEqual([
    undefined,
    undefined,
    '=SUM(A1:B1)',
    undefined,
    undefined,
  ]);
  expect(kept.map(({ address, reason }) => `${address} ${reason}`)).toEqual([
    'A1 formula: not every program has the function LET',
    'B1 formula: it reads the sheet Costs, which is not in the copy',
    'D1 formula: it spills, or a cell it named is gone',
    'E1 PRESSUREDROP: functions that every program has cannot express it',
  ]);
});

test('as new sheets, texts stay texts: no host may make a date of 3/8, or a formula of =A1', async () => {
  const { copy } = await planned({ Jobs: [['Size', '3/8', 12, '=A1', 'plain']] }, { target: 'sheets' });
  const changes = copyChanges(copy).filter(change => 'at' in change && change.at.sheet === 'Jobs copy');
  expect(changes).toContainEqual({ kind: 'format', at: { sheet: 'Jobs copy', address: 'B1' }, numberFormat: '@' });
  expect(changes).toContainEqual({
    kind: 'values',
    at: { sheet: 'Jobs copy', address: 'A1:E1' },
    values: [['Size', '3/8', 12, "'=A1", 'plain']],
  });
  // Formats are written before values, so that they hold for these.
  expect(changes.findIndex(({ kind }) => kind === 'format')).toBeLessThan(changes.findIndex(({ kind }) => kind === 'values'));
});

test('nothing ticked: a sentence', async () => {
  await expect(planned({ Jobs: [['Line']] }, { sheets: [] })).rejects.toThrow(NothingToCopy);
});

test('a cell whose function has not answered is no result to copy: a sentence says what to do', async () => {
  const sheets = {
    Jobs: [[100, f('=HOSE.CUTLENGTH(A1,1,1)', { error: '#BUSY!' }), f('=A1/0', { error: '#NAME?' })]] as FakeCell[][],
  };
  await expect(planned(sheets)).rejects.toThrow(/^Jobs!B1 shows #BUSY!: wait until it is calculated/);
});

test('the catalogue stays at home unless it is wanted; look-ups then hold their values', async () => {
  const open = await openSample();
  try {
    const source = await readCopySource(open.port);
    const plain = planCopy(source, { ...CUSTOMER, sheets: source.names, kind: 'formulas', withCosts: true });
    const names = plain.copy.sheets.map(({ name }) => name);
    expect(names).toContain('Jobs');
    for (const table of ['Hoses', 'Fittings', 'Crimps', 'Machines', 'Rates', 'Guards']) expect(names).not.toContain(table);
    expect(plain.kept.map(({ reason }) => reason)).toContain('ASSEMBLY: the copy is without the parts data');
  } finally {
    open.dispose();
  }
});

test('for a customer the sample keeps lengths, ratings, set-ups and prices, and loses what the workshop pays', async () => {
  const open = await openSample();
  try {
    const source = await readCopySource(open.port);
    const { copy } = planCopy(source, { ...CUSTOMER, sheets: source.names });
    const jobs = valuesOf(sheetOf(copy, 'Jobs'));
    const [before] = [await open.content('Jobs')];
    const headings = before.values[8]!.map(String);
    const column = (heading: string) => headings.findIndex(text => text.startsWith(heading));
    const kept = ['Hose', 'Overall', 'Cut length', 'Working pressure', 'Assembly', 'Die', 'Crimp diameter']
      .map(column)
      .filter(at => at >= 0);
    expect(kept.length).toBeGreaterThan(3);
    for (const at of kept) expect(jobs[9]![at]).toBe(before.values[9]![at]);
    // UNITCOST in Q to T and the margin above are gone, SELLPRICE in U stays.
    expect(jobs[9]!.slice(16, 20)).toEqual(['', '', '', '']);
    expect(jobs[4]!.slice(0, 2)).toEqual(['', '']);
    expect(jobs[9]![20]).toBe(42.5);
    // FINDHOSE and FINDFITTING list what hoses and couplings cost.
    const find = valuesOf(sheetOf(copy, 'Find'));
    expect(find.slice(11).map(line => [line[4], line[11]])).toEqual(find.slice(11).map(() => ['', '']));
    expect(find[11]!.slice(0, 6)).toEqual(['Hose', 'Standard', 'Working pressure', 'Bend radius', '', 'Margin of pressure']);
  } finally {
    open.dispose();
  }
});

test('parts data without costs: no prices, no rate of labour, and look-ups that calculate all the same', async () => {
  const open = await openSample();
  try {
    const source = await readCopySource(open.port);
    const wishes = { ...CUSTOMER, sheets: source.names, kind: 'formulas', withParts: true } as const;
    const { copy } = planCopy(source, wishes);
    const headings = ['Hoses', 'Fittings', 'Guards'].flatMap(name => valuesOf(sheetOf(copy, name))[0]!);
    expect(headings.filter(heading => /price/i.test(String(heading)))).toEqual([]);
    expect(valuesOf(sheetOf(copy, 'Rates')).flat()).not.toContain(58);
    expect(sheetOf(copy, 'Jobs').cells[9]!.filter(({ formula }) => formula !== undefined).length).toBe(10);
  } finally {
    open.dispose();
  }
});

test('as new sheets of the same workbook the copy calculates by itself, and nothing else changes', async () => {
  const open = await openSample();
  try {
    const source = await readCopySource(open.port);
    const wishes = {
      ...CUSTOMER,
      sheets: source.names,
      kind: 'formulas',
      withCosts: true,
      withParts: true,
      target: 'sheets',
    } as const;
    const { copy } = planCopy(source, wishes);
    expect(copy.sheets.map(({ name }) => name)).toContain('Jobs copy');
    await open.write(copyChanges(copy));
    const [ours, theirs] = [await open.content('Jobs'), await open.content('Jobs copy')];
    expect(theirs.formulas.flat().some(formula => /HOSE[._]/.test(formula))).toBe(false);
    expect(theirs.formulas.flat().filter(formula => formula !== '').length).toBeGreaterThan(150);
    const numbers = (values: typeof ours.values) =>
      values.map(row => row.map(value => (typeof value === 'number' ? Number(value.toFixed(9)) : '')));
    expect(numbers(theirs.values)).toEqual(numbers(ours.values));
    expect((await open.port.names()).map(({ name }) => name)).toEqual(['Catalogue']);
    // The copies read each other, not the sheets they were made from.
    expect(theirs.formulas.flat().join('\n')).toMatch(/'Hoses copy'!/);
    expect(theirs.formulas.flat().join('\n')).not.toMatch(/[^'](?:Hoses|Crimps)!/);
  } finally {
    open.dispose();
  }
});
