/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { useWriting } from '../../../src/taskpane/controls/useWriting';
import { WriteButton } from '../../../src/taskpane/controls/WriteButton';
import { WritingBar } from '../../../src/taskpane/controls/WritingBar';
import type { Writing } from '../../../src/sheets/print/writing';
import type { Change, Workbook } from '../../../src/workbook/workbook';
import { refusal, strictExcel } from '../../host/excel/strictExcel';

const cells = (address: string, values: readonly (readonly (string | number)[])[]): Change => ({
  kind: 'values',
  at: { sheet: 'Jobs', address },
  values,
});
/** A status for two lines of a job list. */
const writing: Writing = {
  changes: [cells('B2', [['cut']]), cells('B3', [['cut']])],
  undo: [cells('B2', [['']]), cells('B3', [['open']])],
  message: 'Status written.',
};

/** What every view with a button, an undo and a sentence is made of. */
function View({ workbook }: { readonly workbook: Workbook }) {
  const { outcome, write, undo } = useWriting(workbook);
  return (
    <FluentProvider theme={webLightTheme}>
      <WriteButton disabled={outcome.kind === 'busy'} onClick={() => void write(() => writing)}>
        Write
      </WriteButton>
      <WritingBar outcome={outcome} onUndo={() => void undo()} />
    </FluentProvider>
  );
}

function open() {
  const rows = [
    ['Line', 'Status'],
    [1, ''],
    [2, 'open'],
  ];
  const excel = strictExcel({ Jobs: rows }, { sheet: 'Jobs', row: 0, column: 0, rows: 1, columns: 1 });
  render(<View workbook={excelWorkbook()} />);
  return excel;
}

const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const said = async (words: RegExp) => waitFor(() => expect(screen.getByRole('status').textContent).toMatch(words));

afterEach(() => (refusal.of = []));

test('a co-author’s entry stays, and the view names its cell', async () => {
  const excel = open();
  excel.edit('Jobs', 'B3', 'scrapped');
  press('Write');
  await said(/^Jobs!B3 has changed since this was planned, .*Nothing was written\.$/);
  expect(excel.shown('Jobs', 'B2:B3')).toEqual([[''], ['scrapped']]);
});

test('refused half way, the view says that nothing stands, and nothing does', async () => {
  const excel = open();
  refusal.of = [/^values of Jobs!B3/];
  press('Write');
  await said(/Lift the protection, then try again\. Nothing was written\.$/);
  expect(excel.shown('Jobs', 'B2:B3')).toEqual([[''], ['open']]);
  expect(screen.queryByRole('button', { name: 'Undo' })).toBeNull();
});

test('on a slow host the button waits; what was written is taken back, unless somebody changed it', async () => {
  const excel = open();
  excel.delay = 20;
  press('Write');
  press('Write');
  await said(/^Status written\./);
  expect(excel.written).toHaveLength(2);
  press('Undo');
  await said(/^Taken back\.$/);
  expect(excel.shown('Jobs', 'B2:B3')).toEqual([[''], ['open']]);
  press('Write');
  await said(/^Status written\./);
  excel.edit('Jobs', 'B2', 'done');
  press('Undo');
  await said(/^Not taken back: Jobs!B2 changed since it was written\.$/);
  expect(excel.shown('Jobs', 'B2:B3')).toEqual([['done'], ['cut']]);
});

test('a sheet that was deleted is named', async () => {
  const excel = open();
  excel.book.remove('Jobs');
  press('Write');
  await said(
    /^Sheet "Jobs" is no longer there: it was renamed or deleted\. Look at the sheets, then try again\. Nothing was written\.$/,
  );
});
