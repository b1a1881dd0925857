/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { CopyPanel } from '../../../src/taskpane/controls/copy/CopyPanel';
import type { HostServices } from '../../../src/taskpane/controls/viewProps';
import type { CopiedWorkbook } from '../../../src/workbook/copiedWorkbook';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';

const SHEETS: Record<string, FakeCell[][]> = {
  Jobs: [
    ['Line', 'Overall length (mm)', 'Cut-off', 'Cut length (mm)', 'Cost'],
    [1, 500, 20, { formula: '=HOSE.CUTLENGTH(B2,C2,C2)', value: 460 }, 12.5],
  ],
  Notes: [['for the shop only']],
};

async function open(part: Partial<HostServices> = {}, more: Record<string, FakeCell[][]> = {}, details = {}) {
  const fake = fakeWorkbook({ ...SHEETS, ...more }, { sheet: 'Jobs', address: 'A1' }, details);
  const files: { copy: CopiedWorkbook; name: string }[] = [];
  const services: HostServices = {
    ...viewProps(fake.workbook).services,
    canDownload: () => true,
    downloadCopy: async (copy, name) => {
      files.push({ copy, name });
      return true;
    },
    ...part,
  };
  render(
    <FluentProvider theme={webLightTheme}>
      <CopyPanel workbook={fake.workbook} services={services} />
    </FluentProvider>,
  );
  fireEvent.click(screen.getByRole('button', { name: 'Copy without Benchrow' }));
  await screen.findByLabelText('Notes');
  return { ...fake, files };
}

const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));

test('a customer gets the ticked sheets as values, without costs; the pane says what was left out', async () => {
  const { files, written } = await open();
  fireEvent.click(screen.getByLabelText('Notes'));
  press('Download the copy (.xlsx)');
  await waitFor(() => expect(files).toHaveLength(1));
  const [{ copy, name }] = files as [(typeof files)[0]];
  expect(name).toMatch(/^Copy without Benchrow \d{4}-\d\d-\d\d\.xlsx$/);
  expect(copy.sheets.map(sheet => sheet.name)).toEqual(['Read first', 'Jobs']);
  expect(copy.sheets[1]!.cells[1]!.map(({ value }) => value)).toEqual([1, 500, 20, 460, '']);
  expect(await screen.findByText(/Left out: Costs and margins: Jobs!E1 \(Cost\)/)).toBeTruthy();
  expect(written).toEqual([]);
});

test('plain formulas are for another office: they come with costs and parts data until these are unticked', async () => {
  const { files } = await open();
  fireEvent.click(screen.getByLabelText('Plain formulas'));
  expect((screen.getByLabelText('With costs and margins') as HTMLInputElement).checked).toBe(true);
  expect((screen.getByLabelText('With parts data (catalogue)') as HTMLInputElement).checked).toBe(true);
  press('Download the copy (.xlsx)');
  await waitFor(() => expect(files).toHaveLength(1));
  const jobs = files[0]!.copy.sheets[1]!;
  expect(jobs.cells[1]![3]!.formula).toMatch(/^=IF\(B2=""/);
  expect(jobs.cells[1]![4]!.value).toBe(12.5);
  expect(await screen.findByText(/2 sheets and “Read first”\. 1 formula\./)).toBeTruthy();
});

test('where there are no downloads the copy is written as new sheets, in one batch', async () => {
  const { written, files } = await open({ canDownload: () => false });
  expect(screen.queryByRole('button', { name: 'Download the copy (.xlsx)' })).toBeNull();
  press('Write the copy as new sheets');
  await waitFor(() => expect(written).toHaveLength(1));
  expect(written[0]!.flatMap(change => (change.kind === 'addSheet' ? [change.sheet] : []))).toEqual([
    'Read first',
    'Jobs copy',
    'Notes copy',
  ]);
  expect(JSON.stringify(written[0])).not.toMatch(/HOSE[._]/);
  expect(await screen.findByText('Jobs copy')).toBeTruthy();
  expect(files).toEqual([]);
});

test('nothing ticked: nothing is copied, and a sentence says why', async () => {
  const { files } = await open();
  fireEvent.click(screen.getByLabelText('Notes'));
  fireEvent.click(screen.getByLabelText('Jobs'));
  press('Download the copy (.xlsx)');
  expect(await screen.findByText(/No copy was made: Tick a sheet that holds something\./)).toBeTruthy();
  expect(files).toEqual([]);
});

test('a price list and a hidden sheet are not ticked, say why, and can be ticked; the pane reports what came and what did not', async () => {
  const more: Record<string, FakeCell[][]> = {
    'Bulk hose': [
      ['Article', 'Price per m'],
      ['Rowan DN 10', 4.85],
    ],
    Discounts: [['North', 0.32]],
    Loads: [['from', 'to']],
  };
  const { files } = await open({}, more, { hiddenSheets: ['Discounts', 'Loads'] });
  const isTicked = (label: string) => (screen.getByLabelText(label) as HTMLInputElement).checked;
  expect(['Jobs', 'Bulk hose (price list)', 'Discounts (hidden)'].map(isTicked)).toEqual([true, false, false]);
  fireEvent.click(screen.getByLabelText('Bulk hose (price list)'));
  fireEvent.click(screen.getByLabelText('Discounts (hidden)'));
  press('Download the copy (.xlsx)');
  await waitFor(() => expect(files).toHaveLength(1));
  expect(files[0]!.copy.sheets.map(({ name, isHidden }) => [name, isHidden])).toEqual([
    ['Read first', false],
    ['Jobs', false],
    ['Notes', false],
    ['Bulk hose', false],
    ['Discounts', true],
  ]);
  expect(files[0]!.copy.sheets[3]!.cells[1]!.map(({ value }) => value)).toEqual(['Rowan DN 10', '']);
  expect(
    await screen.findByText(/Copied and still hidden: sheet Discounts\. Left out: .*Bulk hose!B1.*Sheets: Loads \(hidden\)\./),
  ).toBeTruthy();
});
