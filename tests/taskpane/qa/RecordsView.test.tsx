/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { RecordsView } from '../../../src/taskpane/qa/RecordsView';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';
import { recordSheets } from '../../sheets/inspection/recordSheets';

beforeEach(() => localStorage.clear());

async function open(sheet = 'Readings', address = 'A2:A3') {
  const fake = fakeWorkbook(recordSheets, { sheet, address });
  const view = render(
    <FluentProvider theme={webLightTheme}>
      <RecordsView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  await screen.findByRole('option', { name: 'Jobs' });
  return { ...fake, ...view };
}

const fill = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

test('records are added as data, undone, and what the user wrote is kept for the next time', async () => {
  const { workbook, unmount } = await open();
  fill('Operator', 'J. Doe (invented)');
  fill('Leak', 'none');
  fireEvent.click(screen.getByRole('button', { name: 'Add to Inspection records' }));
  expect(await screen.findByText('Inspection records: 2 rows added from row 2.')).toBeTruthy();
  const values = (await workbook.used('Inspection records'))!.values;
  expect(values[1]![values[0]!.indexOf('Operator')]).toBe('J. Doe (invented)');
  expect(values[1]![values[0]!.indexOf('Leak')]).toBe('none');
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  await waitFor(async () => expect((await workbook.used('Inspection records'))!.values.flat().join('')).toBe(''));
  unmount();
  await open();
  expect(screen.getByLabelText('Operator')).toHaveProperty('value', 'J. Doe (invented)');
  // What one test showed is never carried over to the next.
  expect(screen.getByLabelText('Leak')).toHaveProperty('value', '');
});

test('caliper, lots and customer are of one workbook: they come back with it, and are not there in the next', async () => {
  const first = await open();
  fill('Caliper', 'K-1');
  fill('Hose lot', 'L-9');
  fill('Workshop', 'Ash lane');
  await waitFor(async () => expect(await first.workbook.recall('records')).toContain('K-1'));
  first.unmount();
  // As they were kept by earlier versions.
  localStorage.setItem('benchrow.records', JSON.stringify({ workshop: 'Ash lane', caliper: 'K-1', hoseLot: 'L-9' }));
  const shown = (label: string) => (screen.getByLabelText(label) as HTMLInputElement).value;
  const second = await open();
  expect(['Caliper', 'Hose lot', 'Workshop'].map(shown)).toEqual(['', '', 'Ash lane']);
  // The same pane, shown the first workbook again.
  second.rerender(
    <FluentProvider theme={webLightTheme}>
      <RecordsView {...viewProps(first.workbook)} />
    </FluentProvider>,
  );
  await waitFor(() => expect(['Caliper', 'Hose lot', 'Workshop'].map(shown)).toEqual(['K-1', 'L-9', 'Ash lane']));
  second.rerender(
    <FluentProvider theme={webLightTheme}>
      <RecordsView {...viewProps(second.workbook)} />
    </FluentProvider>,
  );
  expect(shown('Caliper')).toBe('');
});

test('a new sheet is written and can be shown; mistakes are said', async () => {
  const { workbook } = await open();
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Inspection record' }));
  expect((await workbook.selection()).sheet).toBe('Inspection record');
  fill('Proof factor', '0.5');
  expect(screen.getByText('Proof factor is 0.5: it must be 1 or more')).toBeTruthy();
});

test('where nothing can be recorded, it is said', async () => {
  const fake = fakeWorkbook({ Words: [['only words']] }, { sheet: 'Words', address: 'A1' });
  render(
    <FluentProvider theme={webLightTheme}>
      <RecordsView {...viewProps(fake.workbook)} />
    </FluentProvider>,
  );
  await screen.findByRole('option', { name: 'Words' });
  fireEvent.click(screen.getByRole('button', { name: 'Add to Inspection records' }));
  // Said by the button at once, and by the view itself as soon as it has read the sheet.
  expect(await screen.findAllByText(/has no lines to record here/)).not.toHaveLength(0);
});
