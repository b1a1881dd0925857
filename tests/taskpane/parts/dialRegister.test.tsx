/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { act, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { crimpSetup } from '../../../src/core/catalogue/crimpSetup';
import { dayNumber } from '../../../src/core/units/sheetDate';
import { Decimal } from '../../../src/core/units/decimal';
import type { Change, Workbook } from '../../../src/workbook/workbook';
import { AcceptDial } from '../../../src/taskpane/controls/AcceptDial';
import { DialsView } from '../../../src/taskpane/parts/DialsView';
import type { DialProposal } from '../../../src/sheets/machines/dialProposal';
import { planDial } from '../../../src/sheets/machines/planDial';
import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import { today } from '../../../src/sheets/table/today';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';
import { gate, machineHeadings, registerSheets, withoutRegister } from '../../sheets/machines/registerSheets';

const proposal: DialProposal = {
  machine: 'Gate',
  die: '',
  hose: 'Larch DN 12',
  fitting: 'Larch cone',
  dial: new Decimal(415),
  date: '2026-03-09',
  note: '',
};

const bookOf = (sheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>>) =>
  fakeWorkbook(sheets, { sheet: 'Machines', address: 'A1' });

async function planned(part: Partial<DialProposal> = {}, sheets = registerSheets(gate)) {
  const { workbook } = bookOf(sheets);
  return { workbook, plan: await planDial(workbook, { ...proposal, ...part }, '2026-03-09') };
}

test('a dial recorded for a pattern is what counted before, and a row for the fitting itself may carry its date', async () => {
  const byPattern = gate.map(row => row.map(cell => (cell === 'Larch cone' ? 'Larch*' : cell)));
  const { plan } = await planned({ date: '2026-02-01' }, registerSheets(byPattern));
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.comparison.old).toEqual({ dial: '410', from: 'MACHINE', date: '' });
});

test('a new row keeps the old ones, says what counted before, and CRIMPSETUP’s look-up takes it', async () => {
  const { workbook, plan } = await planned();
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.comparison.old).toEqual({ dial: '410', from: 'MACHINE', date: '2026-02-01' });
  expect(plan.message).toEqual(['Adds row 4 to sheet Machines. Earlier rows are not changed.']);
  await workbook.write(plan.writing.changes);
  const rows = (await workbook.used('Machines'))!.values;
  expect(rows.slice(0, 3)).toEqual([machineHeadings, ...gate]);
  expect(rows[3]).toEqual([
    'Gate',
    'D23',
    'Larch DN 12',
    'Larch cone',
    415,
    '',
    '',
    '',
    '',
    dayNumber('2026-03-09'),
    'before 410',
  ]);
  const catalogue = (await workbookCatalogue(workbook))!.catalogue!;
  expect(catalogue.problems).toEqual([]);
  expect(crimpSetup(catalogue, 'Larch DN 12', 'Larch cone', 'Gate')).toMatchObject({ dial: 415, source: 'MACHINE' });
  await workbook.write(plan.writing.undo);
  expect(crimpSetup((await workbookCatalogue(workbook))!.catalogue!, 'Larch DN 12', 'Larch cone', 'Gate')).toMatchObject({
    dial: 410,
  });
});

test('a row outside the range that the Catalogue reads extends it, and only that argument', async () => {
  const { workbook, plan } = await planned({}, registerSheets(gate, 'A1:K3'));
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.message[1]).toBe('The Catalogue cell reads Machines to A1:K3 only: it will read A1:K24.');
  await workbook.write(plan.writing.changes);
  const [cell] = await workbook.read([{ sheet: 'Catalogue', address: 'A1' }]);
  expect(cell!.formulas).toEqual([['=HOSE.CATALOGUE(Hoses!A1:D9,Fittings!A1:E9,Crimps!A1:F9,Machines!A1:K24)']]);
  expect(crimpSetup((await workbookCatalogue(workbook))!.catalogue!, 'Larch DN 12', 'Larch cone', 'Gate').dial).toBe(415);
  await workbook.write(plan.writing.undo);
  const [restored] = await workbook.read([{ sheet: 'Catalogue', address: 'A1' }]);
  expect(restored!.formulas[0]![0]).toContain('Machines!A1:K3)');
});

test('the Catalogue’s dial counted for the only machine, never for a further one that nobody has said it of', async () => {
  const { plan: only } = await planned({ machine: 'Van' }, withoutRegister());
  if (only.kind !== 'ready') throw new Error(only.sentence);
  expect(only.comparison.old).toEqual({ dial: '400', from: 'CATALOGUE', date: '' });
  const { plan } = await planned({ machine: 'Van' });
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.comparison.old).toEqual({ dial: '', from: 'NO DIAL', date: '' });
  expect(plan.comparison.warnings).toEqual(['Machines has no row for Van yet: this one will be the first.']);
});

const catalogueFormula = async (workbook: Workbook) =>
  (await workbook.read([{ sheet: 'Catalogue', address: 'A1' }]))[0]!.formulas[0]![0];

test.each([
  ['no sheet Machines', withoutRegister(), 'Machines', /sheet Machines is made, with this dial as its first row/],
  ['a blank sheet Machines', withoutRegister({ machines: [['']] }), 'machines', /made on the blank sheet machines/],
  [
    'a sheet Machines with something else',
    withoutRegister({ Machines: [['Bought', 'Price']] }),
    'Machines 2026-03-09',
    /sheet Machines 2026-03-09 is made/,
  ],
])('%s: the register is made, the Catalogue cell reads it, undo leaves none of it', async (_, sheets, sheet, message) => {
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Hoses', address: 'A1' });
  const plan = await planDial(workbook, proposal, '2026-03-09');
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.message[0]).toMatch(message);
  await workbook.write(plan.writing.changes);
  const name = sheet.includes(' ') ? `'${sheet}'` : sheet;
  expect(await catalogueFormula(workbook)).toBe(`=HOSE.CATALOGUE(Hoses!A1:D9,Fittings!A1:E9,Crimps!A1:F9,${name}!A1:N22)`);
  const catalogue = (await workbookCatalogue(workbook))!.catalogue!;
  expect(catalogue.problems).toEqual([]);
  expect(crimpSetup(catalogue, 'Larch DN 12', 'Larch cone', 'Gate')).toMatchObject({ dial: 415, source: 'MACHINE' });
  const again = await planDial(workbook, { ...proposal, dial: new Decimal(416), date: '2026-03-10' }, '2026-03-10');
  expect(again.kind === 'ready' && again.message).toEqual([`Adds row 3 to sheet ${sheet}. Earlier rows are not changed.`]);
  await workbook.write(plan.writing.undo);
  expect(await catalogueFormula(workbook)).toBe('=HOSE.CATALOGUE(Hoses!A1:D9, Fittings!A1:E9, Crimps!A1:F9)');
  expect((await workbook.used(sheet))!.values.flat().join('')).toBe('');
});

test('a sheet Machines that the Catalogue does not read is taken with the dials it holds', async () => {
  const sheets = withoutRegister({ Machines: [['Dials of the workshop'], machineHeadings, ...gate] });
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Hoses', address: 'A1' });
  const plan = await planDial(workbook, proposal, '2026-03-09');
  if (plan.kind !== 'ready') throw new Error(plan.sentence);
  expect(plan.comparison.old).toEqual({ dial: '410', from: 'MACHINE', date: '2026-02-01' });
  expect(plan.message[1]).toBe('The Catalogue cell does not read sheet Machines yet: it will read A2:K25.');
  await workbook.write(plan.writing.changes);
  expect(crimpSetup((await workbookCatalogue(workbook))!.catalogue!, 'Larch DN 12', 'Larch cone', 'Gate').dial).toBe(415);
  const tooHigh = await planDial(workbook, { ...proposal, dial: new Decimal(901), date: '2026-03-10' }, '2026-03-10');
  expect(tooHigh.kind === 'refused' && tooHigh.sentence).toMatch(/above the machine’s highest dial, 900/);
});

test.each<[string, Partial<DialProposal>, RegExp]>([
  ['a date before the newest', { date: '2026-01-15' }, /newer dial, 410 of 2026-02-01: a row of 2026-01-15 would not count/],
  ['a date ahead', { date: '2026-03-10' }, /is in the future/],
  ['no date', { date: 'soon' }, /"soon" is not a date/],
  ['the dial that counts already', { dial: new Decimal(410) }, /410 is the dial that counts already \(MACHINE, 2026-02-01\)/],
  ['a dial below the lowest', { dial: new Decimal(90) }, /below the machine’s lowest dial, 100: look at die/],
  ['a dial above the highest', { dial: new Decimal(901) }, /above the machine’s highest dial, 900/],
  ['another die', { die: 'D27' }, /crimps this pair with die D23: a dial for D27 would not be used/],
  ['a pair without crimp data', { fitting: 'Larch elbow' }, /no crimp data for Larch DN 12 with Larch elbow: do not assemble/],
  ['no machine', { machine: ' ' }, /Say for which machine/],
  ['no coupling', { fitting: '' }, /Say for which coupling/],
])('refused in words: %s', async (_, part, sentence) => {
  const { plan } = await planned(part);
  expect(plan.kind === 'refused' && plan.sentence).toMatch(sentence);
});

test.each<[string, Readonly<Record<string, readonly (readonly FakeCell[])[]>>, RegExp]>([
  [
    'no Catalogue',
    { Jobs: [['x']] },
    /has no Catalogue cell.*load your hoses, couplings and crimp data under Parts › Load first/,
  ],
  [
    'no column Date',
    {
      ...registerSheets([]),
      Machines: [
        ['Machine', 'Die', 'Hose', 'Fitting', 'Dial'],
        ['Gate', 'D23', 'Larch DN 12', 'Larch cone', 410],
      ],
    },
    /has no column Date: add it, so that old dials are kept/,
  ],
  [
    'something right below',
    registerSheets([...gate, ['a note']], 'A1:K3'),
    /Row 4 of sheet Machines, right below the table Machines, is filled/,
  ],
])('refused in words: %s', async (_, sheets, sentence) => {
  const { workbook } = fakeWorkbook(sheets, { sheet: Object.keys(sheets)[0]!, address: 'A1' });
  const plan = await planDial(workbook, proposal, '2026-03-09');
  expect(plan.kind === 'refused' && plan.sentence).toMatch(sentence);
});

describe('several dials on one day', () => {
  const at = (time: string) => [
    ...gate,
    ['Gate', 'D23', 'Larch DN 12', 'Larch cone', 412, '', '', '', '', `2026-03-09 ${time}`, ''],
  ];
  const afternoon = (part: Partial<DialProposal> = {}, sheets = registerSheets(at('09:15'), 'A1:K9')) => {
    const { workbook } = bookOf(sheets);
    return planDial(workbook, { ...proposal, ...part }, '2026-03-09 14:30').then(plan => ({ workbook, plan }));
  };

  test('a dial of today is recorded with its time of day and counts from then on', async () => {
    const { workbook, plan } = await afternoon();
    if (plan.kind !== 'ready') throw new Error(plan.sentence);
    expect(plan.comparison).toMatchObject({ from: '2026-03-09 14:30', old: { dial: '412', date: '2026-03-09 09:15' } });
    expect(plan.writing.changes).toContainEqual(expect.objectContaining({ kind: 'format', numberFormat: 'yyyy-mm-dd hh:mm' }));
    await workbook.write(plan.writing.changes);
    const catalogue = (await workbookCatalogue(workbook))!.catalogue!;
    expect(catalogue.problems).toEqual([]);
    expect(crimpSetup(catalogue, 'Larch DN 12', 'Larch cone', 'Gate')).toMatchObject({ dial: 415, source: 'MACHINE' });
  });

  test('of one date and time the lower row counts, and that is said before it is written', async () => {
    const { workbook, plan } = await afternoon({ date: '2026-03-09 09:15' });
    if (plan.kind !== 'ready') throw new Error(plan.sentence);
    expect(plan.comparison.warnings).toEqual([
      'Machines already has a dial of 2026-03-09 09:15 for this, 412. The lower row counts: the new one.',
    ]);
    await workbook.write(plan.writing.changes);
    const catalogue = (await workbookCatalogue(workbook))!.catalogue!;
    expect(catalogue.problems).toEqual([]);
    expect(crimpSetup(catalogue, 'Larch DN 12', 'Larch cone', 'Gate').dial).toBe(415);
  });

  test.each([
    ['2026-03-09 08:00', /newer dial, 412 of 2026-03-09 09:15: a row of 2026-03-09 08:00 would not count. Add the time of day/],
    ['2026-03-09 15:00', /2026-03-09 15:00 is in the future/],
    ['03/04/2026', /"03\/04\/2026" is not a date: write 2026-04-03 or 2026-03-04/],
  ])('%s is refused', async (date, sentence) => {
    const { plan } = await afternoon({ date });
    expect(plan.kind === 'refused' && plan.sentence).toMatch(sentence);
  });

  test('who set it goes into the column By, else into the note', async () => {
    const named = (changes: readonly Change[]) => changes.flatMap(each => (each.kind === 'values' ? each.values.flat() : []));
    const noted = await afternoon({ by: ' Kim ' });
    expect(noted.plan.kind === 'ready' && named(noted.plan.writing.changes)).toContain('by Kim; before 412');
    const { workbook } = fakeWorkbook(withoutRegister(), { sheet: 'Hoses', address: 'A1' });
    const first = await planDial(workbook, { ...proposal, by: 'Kim' }, '2026-03-09 14:30');
    if (first.kind !== 'ready') throw new Error(first.sentence);
    await workbook.write(first.writing.changes);
    const second = await planDial(workbook, { ...proposal, dial: new Decimal(416) }, '2026-03-09 16:00');
    expect(second.kind === 'ready' && second.comparison.old).toEqual({
      dial: '415',
      from: 'MACHINE',
      date: '2026-03-09 14:30',
      by: 'Kim',
    });
  });
});

test('a long move is warned of, not forbidden: it may have been proved by a trial piece', async () => {
  const { plan } = await planned({ dial: new Decimal(430) });
  expect(plan.kind === 'ready' && plan.comparison.warnings).toEqual([
    'That is 20 digits, more than the largest move 12: look at die, hose, ferrule and readings first.',
  ]);
});

const wrapped = (view: React.ReactElement) => render(<FluentProvider theme={webLightTheme}>{view}</FluentProvider>);

test('nothing is accepted silently: old and new are shown, one press records, undo takes back', async () => {
  const { workbook, written } = bookOf(registerSheets(gate));
  wrapped(<AcceptDial workbook={workbook} proposal={{ ...proposal, date: today() }} label="Record dial 415 …" />);
  fireEvent.click(screen.getByRole('button', { name: 'Record dial 415 …' }));
  expect((await screen.findByText(/^Now/)).textContent).toMatch(
    new RegExp(String.raw`^Now 410 \(Machines, 2026-02-01\), new 415 from ${today()} \d\d:\d\d$`),
  );
  expect(written).toEqual([]);
  fireEvent.click(screen.getByRole('button', { name: 'Do not record' }));
  fireEvent.click(screen.getByRole('button', { name: 'Record dial 415 …' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Record dial 415' }));
  expect(await screen.findByText(/Gate: dial 415 recorded .* row 4 of Machines\. CRIMPSETUP uses it\./)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Record dial 415 …' }));
  expect((await screen.findByRole('alert')).textContent).toMatch(/415 is the dial that counts already/);
  fireEvent.click(screen.getByRole('button', { name: 'Close' }));
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  await waitFor(async () => expect((await workbook.used('Machines'))!.values[3]!.join('')).toBe(''));
});

test('the view Dials takes machine and pair from the selected row', async () => {
  const readings = [
    ['Machine', 'Hose', 'Fitting', 'Die', 'Reading 1', 'Reading 2', 'Target', 'Tolerance'],
    ['Gate', 'Larch DN 12', 'Larch cone', 'D23', 25.01, 25.02, 25, 0.1],
  ];
  const { workbook } = fakeWorkbook({ ...registerSheets(gate), Readings: readings }, { sheet: 'Readings', address: 'A2' });
  wrapped(<DialsView {...viewProps(workbook)} />);
  await waitFor(() => expect(screen.getByLabelText('Coupling')).toHaveProperty('value', 'Larch cone'));
  fireEvent.change(screen.getByLabelText('New dial'), { target: { value: '411' } });
  fireEvent.click(screen.getByRole('button', { name: 'Compare with the dial that counts now' }));
  expect(await screen.findByRole('button', { name: 'Record dial 411' })).toBeTruthy();
});

test('machine and pair follow the selection until a dial is typed for them', async () => {
  const row = (fitting: string) => ['Gate', 'Larch DN 12', fitting, 'D23', 25.01, 25.02, 25, 0.1];
  const headings = ['Machine', 'Hose', 'Coupling', 'Die', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)'];
  const readings = [headings, row('Larch cone'), row('Larch flange')];
  const { workbook } = fakeWorkbook({ ...registerSheets(gate), Readings: readings }, { sheet: 'Machines', address: 'A1' });
  wrapped(<DialsView {...viewProps(workbook)} />);
  const coupling = () => screen.getByLabelText<HTMLInputElement>('Coupling').value;
  const select = (address: string) => act(() => workbook.select({ sheet: 'Readings', address }));
  fireEvent.change(screen.getByLabelText('New dial'), { target: { value: '411' } });
  await select('A2');
  await waitFor(() => expect(coupling()).toBe('Larch cone'));
  await select('A3');
  await act(() => new Promise(resolve => setTimeout(resolve, 50)));
  expect(coupling()).toBe('Larch cone');
  fireEvent.change(screen.getByLabelText('New dial'), { target: { value: '' } });
  await select('A2');
  await select('A3');
  await waitFor(() => expect(coupling()).toBe('Larch flange'));
});
