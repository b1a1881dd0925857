/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import type { Change } from '../../../src/workbook/workbook';
import { AnalysisView } from '../../../src/taskpane/qa/AnalysisView';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { tableAnswers } from '../../../src/sheets/table/tableAnswers';
import { columnField } from '../columnField';
import { viewProps } from '../viewProps';
import { recallAnalysis } from '../../../src/sheets/analysis/analysisMemory';
import { PLANTED_SHEETS } from '../../sheets/analysis/plantedSheets';
import { sampleSheets } from '../../sheets/analysis/sampleSheet';

let book: Readonly<Record<string, FakeCell[][]>>;
beforeEach(() => localStorage.clear());
beforeAll(async () => {
  book = await sampleSheets('measurement-book.xlsx');
});

function open(sheet: string, address = 'F12', sheets: Readonly<Record<string, FakeCell[][]>> = book) {
  const fake = fakeWorkbook(sheets, { sheet, address });
  render(
    <FluentProvider theme={webLightTheme}>
      <AnalysisView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  return fake;
}

const section = (name = 'All crimps') => screen.findByRole('region', { name });
const fill = (label: RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

test('the machine that has gone off: counts, the finding in a sentence, every number of the picture as text', async () => {
  open('Week 40');
  const crimps = within(await section());
  expect(crimps.getByText(/^All combinations crimp 0\.10 mm large: recalibrate\.$/)).toBeTruthy();
  expect(screen.getByRole('list', { name: 'Verdicts' }).textContent).toMatch(/^\d+ IN SPEC0 TIGHT\d+ LOOSE0 OVAL0 UNSURE$/);
  const table = within(crimps.getByRole('table', { name: 'Deviations by combination' }));
  expect(table.getAllByRole('row').map(row => row.textContent)).toContain('Larch DN 12 with 24° cone60+0.098');
  expect(crimps.getByRole('img', { name: /Deviations of 30 crimps of 5 combinations/ })).toBeTruthy();
});

test('a table without readings is said to have none, not row by row to lack a target', async () => {
  open('Jobs', 'A2', {
    Jobs: [
      ['Line', 'Hose', 'Fitting', 'Length (mm)'],
      [1, 'Larch DN 12', '24° cone', 900],
      [2, 'Larch DN 10', '24° cone', 800],
    ],
  });
  expect(await screen.findByText(/^No readings here: no column of readings was found on sheet Jobs/)).toBeTruthy();
  expect(screen.queryByText(/not readable/)).toBeNull();
});

test('without readings here, each table that holds some is one press away', async () => {
  open('Jobs', 'A2', {
    Jobs: [
      ['Line', 'Hose', 'Fitting', 'Length (mm)', 'Quantity'],
      [1, 'Larch DN 12', '24° cone', 900, 2],
    ],
    'Week 40': book['Week 40']!,
  });
  const offered = within(await screen.findByRole('group', { name: 'Tables of this workbook' })).getAllByRole('button');
  expect(offered.map(({ textContent }) => textContent)).toEqual([expect.stringMatching(/^Week 40 /)]);
  fireEvent.click(offered[0]!);
  expect(await section()).toBeTruthy();
});

test('the pictures are drawn: a strip a combination, a shape a verdict', async () => {
  open('Week 39');
  const picture = within(await section()).getByRole('img', { name: /Deviations of 30 crimps/ });
  await waitFor(() => expect(picture.querySelector('svg')).toBeTruthy(), { timeout: 15_000 });
  const titles = [...picture.querySelectorAll('title')].map(each => each.textContent);
  expect(titles).toHaveLength(30);
  expect(titles.filter(text => /LOOSE/.test(text!))).toHaveLength(6);
  expect(picture.textContent).toContain('Rowan DN 19 with split flange');
});

test('change per digit and per turn, entered by hand, make the next dial and the turns', async () => {
  open('Week 41');
  await section();
  fireEvent.click(screen.getByRole('button', { name: 'Limits and machine' }));
  fill(/^Step/, '0.016');
  fill(/^Change per turn/, '0.44');
  const crimps = within(await section());
  expect(
    crimps.getByText(
      /^Alder DN 19 with 60° cone is 0\.1[789] mm large on its own: set its dial from \d+ to \d+, crimp one trial piece and measure/,
    ),
  ).toBeTruthy();
  expect(
    crimps.getByText(
      /^Turn the calibration screw 0\.22 turns looser \(0\.44 mm a turn, as entered\)\. The machine’s manual says which way/,
    ),
  ).toBeTruthy();
});

test('what is typed wrongly is said at its field and not used', async () => {
  open('Week 40');
  await section();
  fireEvent.click(screen.getByRole('button', { name: 'Limits and machine' }));
  fill(/^Change per turn/, '-0.4');
  expect(screen.getByText('Change per turn is "-0.4": it must be more than 0')).toBeTruthy();
  expect(within(await section()).getByText(/Enter its change per turn/)).toBeTruthy();
});

test('a row that cannot be used leads to its cell', async () => {
  const rows = book['Week 40']!.map(row => [...row]);
  rows[9]![6] = 'loose';
  const { workbook } = open('Week 40', 'A9', { 'Week 40': rows });
  const link = await screen.findByText('Row 10');
  expect(link.parentElement!.textContent).toBe('Row 10: reading 2 is "loose": enter a number, like 12.5, 3/8 or 27.5 mm');
  fireEvent.click(link);
  expect((await workbook.selection()).address).toBe('G10');
  expect(screen.getByText(/^29 crimps read from sheet Week 40/)).toBeTruthy();
});

test('columns are corrected by hand: without the target column the rows say once what is missing', async () => {
  const { workbook } = open('Week 40');
  await section();
  const column = (name: string) => screen.getByRole<HTMLSelectElement>('combobox', { name });
  await waitFor(() => columnField('J: Target (mm)'));
  expect([column('F: Reading 1 (mm)').value, column('J: Target (mm)').value]).toEqual(['reading', 'target']);
  fireEvent.change(column('J: Target (mm)'), { target: { value: 'none' } });
  const links = await screen.findAllByText(/^Row \d+$/);
  expect(links.length).toBeGreaterThanOrEqual(30);
  expect(screen.getAllByText(/target is not known: no column/)).toHaveLength(1);
  expect(screen.queryByRole('region', { name: 'All crimps' })).toBeNull();
  // It is remembered with the workbook.
  expect((await tableAnswers(workbook, 'crimps', 'Week 40')).role.get('target (mm)')).toBe('none');
  await waitFor(() => columnField('J: Target (mm)'));
  fireEvent.change(column('J: Target (mm)'), { target: { value: 'target' } });
  expect(await section()).toBeTruthy();
});

test('a heading without a unit is asked about once, with the unit that its size suggests, and the answer is remembered', async () => {
  const { workbook } = open('Crimps', 'A2', {
    Crimps: [
      ['Hose', 'Fitting', 'Target', 'Tolerance', 'Reading 1', 'Reading 2'],
      ['Larch DN 12', 'cone', 27.35, 0.12, 27.3, 27.4],
      ['Larch DN 10', 'cone', 22.8, 0.12, 22.8, 22.8],
    ],
  });
  expect(await screen.findByText('Column E: Reading 1 has no unit. Which is it?')).toBeTruthy();
  expect(screen.getAllByText(/has no unit/)).toHaveLength(1);
  expect(screen.getByText(/the unit of the readings is not known: answer the question about it/)).toBeTruthy();
  expect(screen.getByText('0 crimps read from sheet Crimps.')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'mm' }));
  expect(await screen.findByText('2 crimps read from sheet Crimps.')).toBeTruthy();
  expect((await tableAnswers(workbook, 'crimps', 'Crimps')).unit.get('reading 1')).toBe('mm');
});

test('control charts of one combination, mean and range', async () => {
  open('Week 40');
  const crimps = within(await section());
  fireEvent.change(crimps.getByLabelText('Of'), { target: { value: 'Alder DN 19 with 60° cone' } });
  fireEvent.change(crimps.getByLabelText('Points'), { target: { value: '2' } });
  expect(crimps.getByText(/^Mean: 3 points, centre \+0\.102 mm/)).toBeTruthy();
  expect(crimps.getByText(/^Range: 3 points/)).toBeTruthy();
});

test('results go to a new sheet as values with charts; the try-out sheet says it has no charts', async () => {
  const { written } = open('Week 42');
  await section();
  expect(screen.getByText(/the try-out sheet has no charts of its own/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Write results as a new sheet' }));
  expect(await screen.findByText('Readings', { selector: 'button *, button, a' })).toBeTruthy();
  const changes = written[0] as readonly Change[];
  expect(changes[0]).toEqual({ kind: 'addSheet', sheet: 'Readings' });
  expect(changes.filter(({ kind }) => kind === 'chart')).toHaveLength(5);
});

test('a sheet without readings says what to select', async () => {
  open('Notes', 'A1', { Notes: [['Hello']] });
  expect(await screen.findByText(/No readings here\. Select a cell among your caliper readings/)).toBeTruthy();
});

test('several columns of readings, corrected where one was taken, hold a crimp a row', async () => {
  open('Crimps', 'A2', {
    Crimps: [
      ['Hose', 'Fitting', 'Target (mm)', 'Tolerance (mm)', 'Reading (mm)', 'second', 'third', 'fourth'],
      ['Larch DN 12', 'cone', 27.35, 0.12, 27.3, 27.3, 27.4, 27.4],
      ['Larch DN 10', 'cone', 22.8, 0.12, 22.8, 22.8, 22.8, 22.8],
    ],
  });
  expect(await screen.findByText('0 crimps read from sheet Crimps.')).toBeTruthy();
  for (const name of ['F: second', 'G: third', 'H: fourth']) {
    await waitFor(() => fireEvent.change(columnField(name), { target: { value: 'reading' } }));
    await waitFor(() => expect(columnField(name).value).toBe('reading'));
  }
  expect(await screen.findByText('2 crimps read from sheet Crimps.')).toBeTruthy();
});

describe('a book of eight weeks', () => {
  const planted = (name: string) => PLANTED_SHEETS.find(([each]) => each === name)![1]();
  const openPlanted = (name: string) => {
    const { rows, log } = planted(name);
    const sheets = { Crimps: rows.map(row => [...row]), ...(log && { 'Machine log': log.map(row => [...row]) }) };
    return open('Crimps', 'A3', sheets as Record<string, FakeCell[][]>);
  };

  test('a shift is dated, drawn over time and by die, and nothing is green', async () => {
    openPlanted('a shift in week 6');
    const crimps = within(await section());
    expect(
      crimps.getByText(/^Since 2026-02-09 the whole machine crimps 0\.13 mm large \(before: 0\.00 mm\): recalibrate\.$/),
    ).toBeTruthy();
    expect(crimps.getByText(/^110 of the 150 crimps since 2026-02-09 are rejected/)).toBeTruthy();
    const picture = crimps.getByRole('img', { name: /^Deviations over time\. The machine changed on 2026-02-09/ });
    await waitFor(() => expect(picture.querySelector('svg')).toBeTruthy(), { timeout: 15_000 });
    expect(picture.textContent).toContain('change 2026-02-09');
    expect(crimps.getByRole('table', { name: 'Deviations by die' })).toBeTruthy();
    expect(crimps.queryByText('In order')).toBeNull();
    expect(
      crimps.getByText(/^These numbers say little about the future: .*the machine changed in between; a cause was found/),
    ).toBeTruthy();
  });

  test('a recalibration in the Machine log starts afresh; “From day” is remembered with the workbook', async () => {
    const { workbook } = openPlanted('recalibrated in week 6, logged');
    const crimps = within(await section());
    expect(crimps.getByText('In order')).toBeTruthy();
    expect(crimps.getAllByText(/count.* made since the change in Machine log of 2026-02-06 \(row 3\)/).length).toBeGreaterThan(0);
    fireEvent.change(screen.getByLabelText('From day'), { target: { value: '2027-01-01' } });
    expect(await screen.findByText('Not enough crimps yet: none was made since 2027-01-01.')).toBeTruthy();
    expect((await recallAnalysis(workbook)).fromDay).toEqual({ Crimps: '2027-01-01' });
  });

  test('two machines without a column are asked about; the answer is kept', async () => {
    const { workbook } = openPlanted('two machines without a column');
    expect(await screen.findByText('Two machines in one list?')).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: /^They are all of one machine/ }));
    await waitFor(() => expect(screen.queryByText('Two machines in one list?')).toBeNull());
    expect((await recallAnalysis(workbook)).oneMachine).toEqual(['Crimps|']);
  });

  test('a crimp with a slip is named, left out for good by hand, and taken back', async () => {
    const { workbook } = openPlanted('slips of the pen, machine off');
    expect(
      await screen.findByText(/^Row 18, .*: reading 2 is 24\.2 \(cell G18, the others are about 25\.\d\d mm\)/),
    ).toBeTruthy();
    const before = screen.getByRole('list', { name: 'Verdicts' }).textContent;
    fireEvent.click(screen.getByRole('checkbox', { name: 'Leave out row 18 for good' }));
    const left = await screen.findByRole('checkbox', { name: /^Left out: row 18, / });
    expect(screen.getByRole('list', { name: 'Verdicts' }).textContent).not.toBe(before);
    expect((await recallAnalysis(workbook)).leftOut).toHaveLength(1);
    fireEvent.click(left);
    expect(await screen.findByRole('checkbox', { name: 'Leave out row 18 for good' })).toBeTruthy();
  });

  test('capability follows the combination that is chosen', async () => {
    openPlanted('nothing wrong');
    const crimps = within(await section());
    const rows = () =>
      within(crimps.getByRole('table', { name: 'Capability' }))
        .getAllByRole('row')
        .map(row => row.textContent);
    expect(
      rows()
        .slice(1)
        .map(text => text!.replace(/[\d.–−]+$/, '')),
    ).toEqual([
      expect.stringMatching(/^Cp, if every setting were right/),
      expect.stringMatching(/^Ppk, with the settings as they are/),
      expect.stringMatching(/^Cpk of the worst combination, /),
    ]);
    expect(crimps.getByText(/^With the settings as they are, .* of 1000 would come out too large or too small/)).toBeTruthy();
    fireEvent.change(crimps.getByLabelText('Of'), { target: { value: 'Alder DN 10 with elbow 90°' } });
    expect(crimps.getByText('Capability of Alder DN 10 with elbow 90°')).toBeTruthy();
    expect(rows()).toHaveLength(6);
  });
});
