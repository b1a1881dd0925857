/** @jest-environment ./tests/quickJsdom.mjs */
import { CUT_CAUTION } from '../../../src/sheets/print/cautions';
import { act, fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { hostServices } from '../../../src/taskpane/app/hostServices';
import type { CutPlan } from '../../../src/core/cutplan/cutPlan';
import { solveCutPlan } from '../../../src/core/cutplan/solveCutPlan';
import type { Change } from '../../../src/workbook/workbook';
import { CardsView } from '../../../src/taskpane/week/CardsView';
import { CutPlanView } from '../../../src/taskpane/week/CutPlanView';
import { TagsView } from '../../../src/taskpane/week/TagsView';
import type { PlanSolver } from '../../../src/sheets/cutlist/planSolver';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';
import { demoSheets } from '../../sheets/cutlist/demoWorkbook';

beforeEach(() => localStorage.clear());

function open(solve: PlanSolver = solveCutPlan, address = 'A2') {
  const fake = fakeWorkbook(demoSheets, { sheet: 'Jobs', address });
  const { unmount } = render(
    <FluentProvider theme={webLightTheme}>
      <CutPlanView {...viewProps(fake.workbook)} services={{ ...hostServices, solve }} />
    </FluentProvider>,
  );
  return { ...fake, unmount };
}

const fill = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

async function plan() {
  await screen.findByRole('option', { name: 'Rack' });
  fill(/^Kerf/, '3');
  fill(/^Keep from/, '500');
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
}

test('a plan for every hose: pictures with words, proof, comparison, what is short and what to buy', async () => {
  open();
  await plan();
  const twelve = await screen.findByRole('region', { name: 'Larch DN 12' });
  expect(within(twelve).getByText(/Proven best|At most .* % over/)).toBeTruthy();
  expect(within(twelve).getAllByRole('img')[0]!.getAttribute('aria-label')).toMatch(/to scale: \d+ × \d+ mm: line/);
  const rowan = screen.getByRole('region', { name: 'Rowan DN 19' });
  expect(within(rowan).getByText(/too short for line 4 Boom: 1 × 3303 mm/).textContent).toMatch(
    /Buy 1 reel of 20000 mm: the least that is enough/,
  );
  expect(screen.getByText(CUT_CAUTION)).toBeTruthy();
});

test('a line that cannot be read is named and leads to its row', async () => {
  const { workbook } = open();
  await plan();
  const link = await screen.findByText('Row 6');
  expect(link.parentElement!.textContent).toBe('Row 6: cut length is blank: fill it in');
  fireEvent.click(link);
  expect((await workbook.selection()).address).toBe('A6');
});

test('selected rows only: two lines, one hose', async () => {
  open(solveCutPlan, 'A3:A4');
  await plan();
  await screen.findByRole('region', { name: 'Larch DN 10' });
  expect(screen.queryByRole('region', { name: 'Rowan DN 19' })).toBeNull();
});

test('a blank kerf is asked for, not taken as 0', async () => {
  const { written } = open();
  await screen.findByRole('option', { name: 'Rack' });
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect(await screen.findByText(/Kerf is blank: enter the width of your cut, 0 for a knife/)).toBeTruthy();
  expect(document.activeElement).toBe(screen.getByLabelText(/^Kerf/));
  expect(written).toEqual([]);
});

test('what is kept has to be said: a length, or that nothing is', async () => {
  open();
  await screen.findByRole('option', { name: 'Rack' });
  fill(/^Kerf/, '3');
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect(await screen.findByText(/enter a length, or tick “Nothing is kept”/)).toBeTruthy();
  fireEvent.click(screen.getByRole('checkbox', { name: /^Nothing is kept/ }));
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect(await screen.findByRole('region', { name: 'Larch DN 12' })).toBeTruthy();
});

test('a tick plans the same lines again with those that were left out', async () => {
  const rows = demoSheets.Jobs!.map((row, index) => [...row, ['Status', '', 'cut'][index] ?? '']);
  const { workbook } = fakeWorkbook({ ...demoSheets, Jobs: rows }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <CutPlanView {...viewProps(workbook)} services={{ ...hostServices, solve: solveCutPlan }} />
    </FluentProvider>,
  );
  await plan();
  expect(await screen.findByText(/^Jobs A1:I8: 5 rows taken; left out: 1 STOP, 1 done$/)).toBeTruthy();
  fireEvent.click(screen.getByRole('checkbox', { name: 'Take rows that are done, too' }));
  expect(await screen.findByText(/^Jobs A1:I8: 6 rows taken; left out: 1 STOP$/)).toBeTruthy();
});

test('a rack whose lengths have no unit is asked about; the answer is remembered, and the cuts are planned', async () => {
  const [, ...rows] = demoSheets.Rack!;
  const rack = [['Hose', 'Length', 'Quantity', 'Place', 'Lot', 'Made'], ...rows];
  const { workbook } = fakeWorkbook({ ...demoSheets, Rack: rack }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <CutPlanView {...viewProps(workbook)} services={{ ...hostServices, solve: solveCutPlan }} />
    </FluentProvider>,
  );
  await plan();
  const question = await screen.findByRole('region', { name: 'Questions about Rack' });
  expect(question.textContent).toContain('Column B: Length has no unit. Which is it?');
  fireEvent.click(within(question).getByRole('button', { name: 'mm' }));
  expect(await screen.findByText(/^Rack A1:F6: 5 rows taken$/)).toBeTruthy();
  expect(screen.queryByRole('region', { name: 'Questions about Rack' })).toBeNull();
});

test('couplings without a column of cut lengths: the view leads to where it is added', async () => {
  const rows = [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Qty'],
    ['Larch DN 12', 'Larch cone DN 12', 'Larch cone DN 12', 900, 1],
  ];
  const { workbook } = fakeWorkbook({ ...demoSheets, Jobs: rows }, { sheet: 'Jobs', address: 'A2' });
  const goTo = jest.fn();
  render(
    <FluentProvider theme={webLightTheme}>
      <CutPlanView {...viewProps(workbook)} services={{ ...hostServices, solve: solveCutPlan }} goTo={goTo} />
    </FluentProvider>,
  );
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Add a column Cut length' }));
  expect(goTo).toHaveBeenCalledWith('week/columns');
});

test('tags: what must not be made is named and gets none; the lines meant stay when a row is shown', async () => {
  const { workbook, written } = fakeWorkbook(demoSheets, { sheet: 'Jobs', address: 'A5:A7' });
  render(
    <FluentProvider theme={webLightTheme}>
      <TagsView {...viewProps(workbook)} />
    </FluentProvider>,
  );
  const message = /^Jobs A1:H8: 2 rows taken; left out: 1 STOP$/;
  await screen.findByText(message);
  fireEvent.click(screen.getByText('Row 6'));
  await act(() => new Promise(resolve => setTimeout(resolve, 300)));
  expect(screen.getByText(message)).toBeTruthy();
  fill(/^Maker/, 'Beet workshop (invented)');
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  await waitFor(() => expect(written).toHaveLength(1));
  expect(await screen.findByText(/STOP, so no tags: line 5\./)).toBeTruthy();
  const rows = (written[0] as readonly Change[]).flatMap(change => (change.kind === 'values' ? change.values : []));
  expect(rows).toHaveLength(1 + 2 + 5);
});

test('cut list, rack and pieces are written in one batch, under names that are free, and taken back in one', async () => {
  const { workbook, written } = open();
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Write cut list, rack and pieces' }));
  await waitFor(() => expect(written).toHaveLength(1));
  const added = (written[0] as readonly Change[]).flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []));
  expect(added).toEqual(['Cut list', 'Rack after', 'Pieces']);
  expect(JSON.stringify(written)).toContain('STOP, left out: row 6 of Jobs: cut length is blank: fill it in.');
  expect(await screen.findByText('Cut list')).toBeTruthy();
  expect(screen.getByText(/22 pieces added/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  expect(await screen.findByText('Taken back.')).toBeTruthy();
  expect(await workbook.sheets()).not.toContain('Pieces');
});

test('a job sheet without a status gets a column for it, filled; pieces that were planned are not planned again', async () => {
  const { workbook } = open();
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Write cut list, rack and pieces' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Add a column Status' }));
  expect(await screen.findByText('Column Status added to sheet Jobs.')).toBeTruthy();
  const { values } = (await workbook.used('Jobs'))!;
  expect(values.map(row => row[8])).toEqual([
    'Status',
    'planned',
    'planned',
    'planned',
    'planned: 1 of 2',
    '',
    'planned',
    'planned',
  ]);
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect(await screen.findByText(/1 row taken; left out: 1 STOP, 5 planned already/)).toBeTruthy();
});

const LOOKS_ALIKE = /nothing tells a new week’s line from the old one/;

test('lines that look like old ones are asked about, but not those whose pieces were written here just now', async () => {
  const { workbook, unmount } = open();
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Write cut list, rack and pieces' }));
  await screen.findByText(/22 pieces added/);
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect(await screen.findByText(/1 row taken; left out: 1 STOP, 5 planned already/)).toBeTruthy();
  expect(screen.queryByText(LOOKS_ALIKE)).toBeNull();
  // Another length in the row: it is no longer the line whose pieces were written.
  await workbook.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'G3' }, values: [[933]] }]);
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect((await screen.findByText(LOOKS_ALIKE)).textContent).toMatch(/^Left out of Jobs: row 3\. /);
  unmount();
  // Another day: nobody knows whose the pieces are.
  render(
    <FluentProvider theme={webLightTheme}>
      <CutPlanView {...viewProps(workbook)} services={{ ...hostServices, solve: solveCutPlan }} />
    </FluentProvider>,
  );
  fireEvent.click(await screen.findByRole('button', { name: 'Plan the cuts' }));
  expect((await screen.findByText(LOOKS_ALIKE)).textContent).toMatch(/^Left out of Jobs: rows 2, 3, 4, 5, 7, 8\. /);
  fireEvent.click(screen.getByRole('checkbox', { name: 'Plan these lines anew, with the piece numbers they have' }));
  // Pieces of another length are not turned into those of the line: that row is asked about still.
  expect(await screen.findByText(/5 rows taken; left out: 1 STOP, 1 planned already/)).toBeTruthy();
  expect(screen.getByText(LOOKS_ALIKE).textContent).toMatch(/^Left out of Jobs: row 3\. /);
  fireEvent.click(screen.getByRole('checkbox', { name: 'This is new work: cut these lines, too' }));
  expect(await screen.findByText(/6 rows taken; left out: 1 STOP/)).toBeTruthy();
  expect(screen.queryByText(LOOKS_ALIKE)).toBeNull();
});

const ON_REELS = /Pieces are planned on these reels already and not cut yet/;

test('a plan on reels that a plan not yet cut uses says so, but not of the pieces that it gives other reels itself', async () => {
  const { workbook } = open(solveCutPlan, 'A3:A4');
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Write cut list, rack and pieces' }));
  await screen.findByText(/9 pieces added/);
  // Right after the writing the plan stands there still: its own reels are no news.
  expect(screen.queryByText(ON_REELS)).toBeNull();
  await workbook.select({ sheet: 'Jobs', address: 'A3:A8' });
  await waitFor(() => expect((screen.getByLabelText(/^Rack/) as HTMLSelectElement).value).toBe('Rack after'));
  fireEvent.change(screen.getByLabelText(/^Rack/), { target: { value: 'Rack' } });
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect((await screen.findByText(ON_REELS)).textContent).toMatch(/Take the rack Rack after, which counts them in\.$/);
  await workbook.select({ sheet: 'Jobs', address: 'A3:A4' });
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  expect(await screen.findByText(/0 rows taken; left out: 2 planned already/)).toBeTruthy();
  fireEvent.click(screen.getByRole('checkbox', { name: 'Take rows that are planned already, too' }));
  expect(await screen.findByText(/2 rows taken/)).toBeTruthy();
  expect(screen.queryByText(ON_REELS)).toBeNull();
});

test('lines planned anew on the rack that has their hose taken off are told, and a press plans them on the rack before', async () => {
  const { workbook } = open(solveCutPlan, 'A3:A4');
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Write cut list, rack and pieces' }));
  await screen.findByText(/9 pieces added/);
  await workbook.select({ sheet: 'Jobs', address: 'A3:A4' });
  await waitFor(() => expect((screen.getByLabelText(/^Rack/) as HTMLSelectElement).value).toBe('Rack after'));
  fireEvent.click(screen.getByRole('button', { name: 'Plan the cuts' }));
  fireEvent.click(await screen.findByRole('checkbox', { name: 'Take rows that are planned already, too' }));
  expect(await screen.findByText(/^The rack Rack after has the hose of .* taken off already/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Plan on Rack' }));
  await waitFor(() => expect(screen.queryByText(/taken off already/)).toBeNull());
  expect(await screen.findByText(/2 rows taken/)).toBeTruthy();
  expect((screen.getByLabelText(/^Rack/) as HTMLSelectElement).value).toBe('Rack');
});

test('a reel whose status keeps it from being used is left out in words, and a tick takes it; unknown words are asked about', async () => {
  const words = ['Status', '', 'blocked: QA', 'Klasse 2', '', ''];
  const Rack = demoSheets.Rack!.map((row, index) => [...row, words[index] ?? '']);
  const { workbook, written } = fakeWorkbook({ ...demoSheets, Rack }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <CutPlanView {...viewProps(workbook)} services={{ ...hostServices, solve: solveCutPlan }} />
    </FluentProvider>,
  );
  await plan();
  const message = 'Left out of the rack: row 3 (Status: blocked: QA); row 4 (Status: Klasse 2; say whether it may be used).';
  expect(await screen.findByText(message)).toBeTruthy();
  expect(screen.getByText('Column G: Status says “Klasse 2”. May that hose be used?', { exact: false })).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Yes, it may be used' }));
  expect(await screen.findByText('Left out of the rack: row 3 (Status: blocked: QA).')).toBeTruthy();
  fireEvent.click(screen.getByRole('checkbox', { name: 'Take rows whose status says no, too' }));
  expect(await screen.findByText('Planned on although their status says no: row 3 (Status: blocked: QA).')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Write cut list, rack and pieces' }));
  await waitFor(() => expect(written).toHaveLength(1));
  expect(JSON.stringify(written)).toContain('Planned on although their status says no: row 3 (Status: blocked: QA).');
});

test('a plan whose lines or rack have changed since is not written; a selection elsewhere is no change', async () => {
  const { workbook, written } = open(solveCutPlan, 'A3:A4');
  await plan();
  await screen.findByRole('region', { name: 'Larch DN 10' });
  await workbook.select({ sheet: 'Rack', address: 'A2' });
  const cell = { sheet: 'Rack', address: 'B5' };
  await workbook.write([{ kind: 'values', at: cell, values: [[9700]] }]);
  fireEvent.click(screen.getByRole('button', { name: 'Write cut list, rack and pieces' }));
  const message = 'Nothing was written: the job sheet, the rack or the sheet Pieces has changed since. Plan the cuts again.';
  expect(await screen.findByText(message)).toBeTruthy();
  expect(written).toHaveLength(1);
  await workbook.write([{ kind: 'values', at: cell, values: [[9800]] }]);
  fireEvent.click(screen.getByRole('button', { name: 'Write cut list, rack and pieces' }));
  await waitFor(() => expect(written).toHaveLength(3));
});

test('a pane that is closed ends the planning', async () => {
  let signal: { readonly aborted: boolean } | undefined;
  const slow: PlanSolver = (_, watch) => {
    signal = watch?.signal;
    return new Promise(() => {});
  };
  const { unmount } = open(slow, 'A3:A4');
  await plan();
  await waitFor(() => expect(signal?.aborted).toBe(false));
  unmount();
  expect(signal?.aborted).toBe(true);
});

test('a double click writes once', async () => {
  const { written } = open();
  await plan();
  const button = await screen.findByRole('button', { name: 'Write cut list, rack and pieces' });
  fireEvent.click(button, { detail: 1 });
  await screen.findByText('Cut list');
  fireEvent.click(button, { detail: 2 });
  await new Promise(resolve => setTimeout(resolve, 30));
  expect(written).toHaveLength(1);
});

test('a plan made with other settings than stand in the fields says so', async () => {
  open(solveCutPlan, 'A3:A4');
  await plan();
  await screen.findByRole('region', { name: 'Larch DN 10' });
  const message = /The plan below was made from sheet Rack with earlier settings/;
  expect(screen.queryByText(message)).toBeNull();
  fill(/^Kerf/, '4');
  expect(screen.getByText(message)).toBeTruthy();
  fill(/^Kerf/, '3');
  expect(screen.queryByText(message)).toBeNull();
});

test('the rack that writing leaves is offered next, and makes the plan that was written no older', async () => {
  const { workbook } = open(solveCutPlan, 'A3:A4');
  await plan();
  fireEvent.click(await screen.findByRole('button', { name: 'Write cut list, rack and pieces' }));
  await screen.findByText(/^Written:/);
  // The view looks for racks again where something is selected.
  await act(() => workbook.select({ sheet: 'Jobs', address: 'A3' }));
  const field = await screen.findByLabelText<HTMLSelectElement>(/^Rack/);
  await waitFor(() => expect(field.value).toBe('Rack after'));
  const message = /The plan below was made from sheet Rack with earlier settings/;
  expect(screen.queryByText(message)).toBeNull();
  fill(/^Kerf/, '4');
  expect(screen.getByText(message)).toBeTruthy();
});

test('progress shows best and bound, and ending it keeps the best so far', async () => {
  let end: (() => void) | undefined;
  const slow: PlanSolver = async (problem, watch) => {
    watch?.onProgress?.(1500, 900);
    await new Promise<void>(resolve => (end = resolve));
    return solveCutPlan(problem, watch) as Promise<CutPlan>;
  };
  open(slow, 'A3:A3');
  await plan();
  expect(await screen.findByText('Best so far takes 1.50 m; no plan can take less than 0.90 m.')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Stop and keep the best so far' }));
  expect(screen.getByRole('button', { name: 'Ending …' })).toBeTruthy();
  const finish = setInterval(() => end?.(), 5);
  expect(await screen.findByRole('region', { name: 'Larch DN 10' })).toBeTruthy();
  clearInterval(finish);
});

test('hose beyond the age limit is left out and told; a tick takes it, with a warning', async () => {
  open();
  fill(/^Age limit/, '6');
  await plan();
  await screen.findByRole('region', { name: 'Larch DN 10' });
  expect(screen.getByText(/Older than your limit, left out: Larch DN 10, A3, lot L66 \(made 2019-05-01\)/)).toBeTruthy();
  fireEvent.click(screen.getByLabelText('Use hose beyond the age limit, too'));
  const ten = await screen.findByText(/A3, lot L66 was made 2019-05-01: older than your limit/);
  expect(ten.closest('section')!.getAttribute('aria-label')).toBe('Larch DN 10');
});

test('a coarse bench: what is cut the other way to keep the length limits is said', async () => {
  open();
  // The nearest step, 1164, is 4.5 mm short; DIN 20066 (memory) allows 4 at 1250 mm, and 12 over.
  fill(/^Bench step/, '12');
  await plan();
  const twelve = await screen.findByRole('region', { name: 'Larch DN 12' });
  expect(within(twelve).getByText(/Line 1: cut 1176 for 1168\.5: the nearer step would miss the length limits/)).toBeTruthy();
});

test('a card is cut to the same step of the bench as the cut list', async () => {
  localStorage.setItem('benchrow.cuts', JSON.stringify({ unit: 'mm', step: '0.5' }));
  const fake = fakeWorkbook(demoSheets, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <CardsView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  await waitFor(() => expect(fake.written).toHaveLength(1));
  expect(JSON.stringify(fake.written[0])).toContain('4 × 1168.5 mm (1164.5 … 1180.5)');
});

test('bench cards and tags are written as new sheets from the same lines', async () => {
  const fake = fakeWorkbook(demoSheets, { sheet: 'Jobs', address: 'A2' });
  const shown = (View: typeof CardsView) => (
    <FluentProvider theme={webLightTheme}>
      <View {...viewProps(fake.workbook)} />
    </FluentProvider>
  );
  const { rerender } = render(shown(CardsView));
  await screen.findByText(/6 rows taken/);
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  await waitFor(() => expect(fake.written).toHaveLength(1));
  rerender(shown(TagsView));
  await screen.findByText(/6 rows taken/);
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  expect(await screen.findByText(/Enter your name as maker first/)).toBeTruthy();
  fill(/^Maker/, 'Beet workshop (invented)');
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  await waitFor(() => expect(fake.written).toHaveLength(2));
  expect(fake.written.map(changes => changes[0])).toEqual([
    { kind: 'addSheet', sheet: 'Bench cards' },
    { kind: 'addSheet', sheet: 'Tags' },
  ]);
});
