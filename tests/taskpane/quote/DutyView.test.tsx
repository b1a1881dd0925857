/** @jest-environment ./tests/quickJsdom.mjs */
import { configure, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { FRESH_DUTY, type DutyText } from '../../../src/sheets/duty/dutyFields';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { LIFT } from '../../sheets/duty/duties';
import { sampleSheets } from '../../sheets/duty/sampleSheets';

// The whole sample catalogue is read and judged; on a busy machine that takes more than the usual second.
configure({ asyncUtilTimeout: 15_000 });

let sheets: Record<string, FakeCell[][]>;

beforeAll(async () => {
  sheets = await sampleSheets();
});
beforeEach(() => localStorage.clear());

async function open(fields: DutyText = LIFT, selected = { sheet: 'Jobs', address: 'B11' }, book = sheets) {
  localStorage.setItem('benchrow.duty', JSON.stringify(fields));
  const fake = fakeWorkbook(book, selected);
  render(<TaskPane workbook={fake.workbook} functions={[]} wanted={{ place: 'quote/duty' }} />);
  return fake;
}

async function find() {
  await screen.findByText(/^Parts data: CAT-/);
  fireEvent.click(screen.getByRole('button', { name: 'Find hoses' }));
  return screen.findByText(/hoses suit|No hose of the catalogue suits/);
}

test('hoses that suit are shown with cost, margins, pressure drop, route, and the cautions', async () => {
  await open();
  expect((await find()).textContent).toMatch(/^\d+ of 48 hoses suit, cheapest first\.$/);
  const margins = screen.getByLabelText('Margins');
  expect(within(margins).getByText(/needs 210 bar, rated 250 bar/)).toBeTruthy();
  expect(within(screen.getByRole('region', { name: 'Pressure drop' })).getAllByText(/bar, (laminar|turbulent)/)).toHaveLength(2);
  const picture = screen.getByRole('img', { name: /^Route of .* to scale/ });
  expect(picture.getAttribute('aria-label')).toContain('bend to the left, 90°, radius 220 mm');
  expect(screen.getByText(/dotted: the straight run asked for, 2 × 25.4 mm; dashed: .* radius 200 mm/)).toBeTruthy();
  // 300 + 250 + (220 + 25.4/2)·π/2 = 915.52; with 6 % slack up to 971; 4 % shorter 932.16, 2 % longer 990.42.
  expect(screen.getByRole('img', { name: /^Lengths of/ }).getAttribute('aria-label')).toMatch(
    /route 915.6 mm; overall 971 mm, 55.4 mm of it slack; under pressure 932.1 mm to 990.5 mm$/,
  );
  expect(screen.getByText(/4 cost \d/)).toBeTruthy();
  expect(screen.getByRole('note').textContent).toMatch(/weakest part sets the rating, surges included/);
  expect(screen.getByRole('note').textContent).toMatch(/Check with the makers that hose, seals and couplings take mineral oil/);
});

test('a row is written into the free row of the selected table, in one batch, and said', async () => {
  const { written, workbook } = await open();
  await find();
  fireEvent.click(screen.getByRole('button', { name: 'Insert as a row of my table' }));
  expect(await screen.findByText(/^Done/)).toBeTruthy();
  expect(written).toHaveLength(1);
  expect(written[0]!.map(change => ('at' in change ? change.at.address : ''))).toEqual(['A19', 'B19', 'C19', 'D19', 'E19']);
  expect(written[0]![0]).toMatchObject({ kind: 'values', values: [['Larch DN 16']] });
  expect((await workbook.selection()).address).toBe('A19');
});

test('hoses ruled out say why, and where a bend is too tight the route shows it in words', async () => {
  await open();
  await find();
  fireEvent.click(screen.getByRole('button', { name: /^Ruled out: \d+/ }));
  const list = await screen.findByRole('list', { name: 'Hoses ruled out' });
  expect(within(list).getAllByText(/^Bore: needs 15.3/).length).toBeGreaterThan(5);
  fireEvent.click(within(list).getAllByRole('button', { name: 'Show where it bends too tight' })[0]!);
  expect(within(list).getByText(/radius 220 mm: too tight, the hose needs \d+ mm/)).toBeTruthy();
  expect(within(list).getByRole('img').textContent).toContain('2tight');
});

test('where no hose suits, the reasons stand open below', async () => {
  await open();
  fireEvent.change(screen.getByLabelText(/^Working pressure/), { target: { value: '4000' } });
  await find();
  expect(screen.getByText(/^No hose of the catalogue suits; 48 are ruled out/)).toBeTruthy();
  expect(within(screen.getByRole('list', { name: 'Hoses ruled out' })).getAllByText(/^Pressure/).length).toBeGreaterThan(40);
});

test('fittings of the hose that do not suit are listed end by end, each with its reason', async () => {
  await open();
  await find();
  fireEvent.click(screen.getByRole('button', { name: /^Fittings ruled out: \d+/ }));
  const atA = await screen.findByRole('region', { name: 'Fittings ruled out, End A' });
  expect(within(atA).getByText('Larch 24° cone L straight DN 16: angle 0°')).toBeTruthy();
  expect(within(atA).getByText(/^Larch 24° cone S straight DN 16: end form 24° cone S$/)).toBeTruthy();
  expect(within(atA).queryByText(/ferrule/)).toBeNull();
  const atB = screen.getByRole('region', { name: 'Fittings ruled out, End B' });
  expect(within(atB).queryByText(/24° cone L/)).toBeNull();
});

test('the list of margins holds names and values only, and a hose and its price are two words of its heading', async () => {
  await open();
  await find();
  // HTML: the children of a dl are dt, dd, or div with nothing but dt and dd in it.
  const groups = [...screen.getAllByLabelText('Margins')[0]!.children];
  expect(groups.length).toBeGreaterThan(10);
  expect(groups.flatMap(group => [...group.children].map(({ tagName }) => tagName)).filter(tag => !/^D[TD]$/.test(tag))).toEqual(
    [],
  );
  expect(screen.getAllByRole('heading', { level: 2 })[0]!.textContent).toMatch(/DN \d+ \d+\.\d\d each$/);
});

test('an empty form says which fields to put right and looks for nothing', async () => {
  await open(FRESH_DUTY);
  await screen.findByText(/^Parts data: CAT-/);
  fireEvent.click(screen.getByRole('button', { name: 'Find hoses' }));
  const message = (await screen.findByText('4 fields to correct')).parentElement!.textContent!;
  expect(message).toMatch(/Coldest is blank: enter it for fluid or air\.Hottest is blank/);
  expect(screen.queryByText(/hoses suit/)).toBeNull();
});

test('a changed form makes the answer stale: it says so and is not inserted', async () => {
  await open();
  await find();
  fireEvent.change(screen.getByLabelText(/^Working pressure/), { target: { value: '300' } });
  expect(await screen.findByText(/The form has changed/)).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Insert as a row of my table' })).toHaveProperty('disabled', true);
});

test('without a table under the selection nothing is written, and that is said', async () => {
  const { written } = await open(LIFT, { sheet: 'Plain', address: 'A1' }, { ...sheets, Plain: [['only a word']] });
  await find();
  fireEvent.click(screen.getByRole('button', { name: 'Insert as a row of my table' }));
  expect(await screen.findByText(/There is no table under the selection/)).toBeTruthy();
  expect(written).toEqual([]);
});

test('a workbook without parts data says what is missing', async () => {
  await open(LIFT, { sheet: 'Jobs', address: 'A1' }, { Jobs: [['Hose', 'Qty']] });
  expect(await screen.findByText('No parts data')).toBeTruthy();
});

test('the form is kept, and the other units turn what stands in it', async () => {
  await open();
  await screen.findByText(/^Parts data: CAT-/);
  fireEvent.click(screen.getByRole('radio', { name: 'US' }));
  await waitFor(() => expect(screen.getByLabelText(/^Working pressure \(psi\)/)).toHaveProperty('value', '2610.7'));
  expect(JSON.parse(localStorage.getItem('benchrow.duty')!)).toMatchObject({ units: 'US', quantity: '4', formA: '24° cone L' });
});

test('parts of the route can be added and taken away', async () => {
  await open();
  const route = await screen.findByRole('list', { name: 'Route' });
  fireEvent.click(screen.getByRole('button', { name: 'Add bend' }));
  expect(within(route).getAllByRole('listitem')).toHaveLength(4);
  fireEvent.click(screen.getByRole('button', { name: 'Take part 2 away' }));
  expect(within(route).getAllByRole('listitem')).toHaveLength(3);
  expect(within(route).getByLabelText('Radius (mm) of part 3')).toHaveProperty('value', '');
});

test('the five fields that matter are shown; the rest is folded and says in a line what is in it', async () => {
  await open();
  const duty = await screen.findByRole('region', { name: 'Duty' });
  const labels = [...duty.querySelectorAll('label')].map(label => label.textContent);
  expect(labels).toEqual([
    ...['Fluid', 'Bore, at least (mm)', 'Working pressure (bar)', 'Fluid, hottest (°C)', 'Fluid, coldest (°C)'],
  ]);
  const fold = (name: string) => screen.getByRole('region', { name }).querySelector('details')!;
  expect(fold('Flow and viscosity').querySelector('summary')!.textContent).toBe(
    'Flow and viscosity: 60 L/min, at most 5.5 m/s, ISO VG 46',
  );
  // What was filled in before is open, until hoses are shown.
  expect(fold('Ends and quantity').open).toBe(true);
  await find();
  expect(fold('Ends and quantity').open).toBe(false);
  expect(fold('Ends and quantity').querySelector('summary')!.textContent).toBe(
    'Ends and quantity: A: 24° cone L, 90°, B: 24° cone L, 4 assemblies',
  );
});

test('a mistake opens the part of the form that it is in', async () => {
  await open({ ...LIFT, surge: '', airColdest: '', airHottest: '' });
  await screen.findByText(/^Parts data: CAT-/);
  const fold = () => screen.getByRole('region', { name: 'Surge, vacuum, air' }).querySelector('details')!;
  expect(fold().open).toBe(false);
  fireEvent.change(screen.getByLabelText(/^Highest surge/), { target: { value: 'much' } });
  fireEvent.click(screen.getByRole('button', { name: 'Find hoses' }));
  await screen.findByText('1 field to correct');
  expect(fold().open).toBe(true);
});

test('without end forms the cheapest couplings of any form are taken', async () => {
  await open({ ...LIFT, formA: '', angleA: '', formB: '' });
  expect((await find()).textContent).toMatch(/hoses suit/);
  expect(screen.getAllByLabelText('Fitting A')[0]!.querySelectorAll('option').length).toBeGreaterThan(2);
});

test('two bent ends are drawn with their twist; without an angle that is asked for', async () => {
  await open({ ...LIFT, angleB: '90', twist: '90' });
  await find();
  // Seen along the hose from end A at six, a quarter counter-clockwise points at three.
  expect(screen.getByRole('img', { name: /^Clock picture: end A at six o’clock, end B at 3:00, 90°/ })).toBeTruthy();
  expect(screen.getByText(/MIL-DTL-83796\/5/)).toBeTruthy();
  expect(screen.getByText(/elbow legs not to scale/)).toBeTruthy();
  fireEvent.change(screen.getByLabelText('Twist angle (°)'), { target: { value: '' } });
  await find();
  expect(await screen.findByText(/^Both ends are bent, but no twist angle is given/)).toBeTruthy();
  expect(screen.queryByRole('img', { name: /^Clock picture/ })).toBeNull();
});
