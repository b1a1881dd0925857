/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { render, screen, waitFor, within } from '@testing-library/react';
import { excelWorkbook } from '../../../src/host/excel/excelWorkbook';
import { Strip } from '../../../src/taskpane/app/strip/Strip';
import { strictExcel } from '../../host/excel/strictExcel';

const cut = ['=HOSE.CUTLENGTH(1,1,1)', 1099.5] as const;
const functions = [{ id: 'CUTLENGTH', name: 'CUTLENGTH', parameters: [] }];
const line = () => within(screen.getByRole('region', { name: 'Selected cell' })).getAllByRole('button')[0]!.textContent;

function open() {
  const rows = [['Cut'], [cut], ['a'], ['b'], [cut]] as const;
  const excel = strictExcel({ Jobs: rows }, { sheet: 'Jobs', row: 1, column: 0, rows: 1, columns: 1 });
  const shown = render(
    <FluentProvider theme={webLightTheme}>
      <Strip workbook={excelWorkbook()} functions={functions} wanted={undefined} onScan={() => undefined} />
    </FluentProvider>,
  );
  return { excel, ...shown };
}

beforeEach(() => localStorage.clear());

test('several selections of which Excel tells once: the strip is about the last, and no cell on the way was read', async () => {
  const { excel } = open();
  await waitFor(() => expect(line()).toMatch(/^A2 HOSE\.CUTLENGTH/));
  await waitFor(() => expect(excel.listeners()).toBe(1));
  const before = excel.syncs;
  excel.select('Jobs', 'A3', 'A4', 'A5');
  await waitFor(() => expect(line()).toMatch(/^A5 HOSE\.CUTLENGTH/));
  const oneCell = excel.syncs - before;
  excel.select('Jobs', 'A4', 'A3', 'A2');
  await waitFor(() => expect(line()).toMatch(/^A2 HOSE\.CUTLENGTH/));
  expect(excel.syncs - before).toBe(2 * oneCell);
});

test('on a slow host the answer about a cell that is left by then is not shown', async () => {
  const { excel } = open();
  await waitFor(() => expect(line()).toMatch(/^A2 /));
  await waitFor(() => expect(excel.listeners()).toBe(1));
  excel.delay = 200;
  const seen: (string | null)[] = [];
  const observer = new MutationObserver(() => seen.push(line()));
  observer.observe(document.body, { subtree: true, childList: true, characterData: true });
  excel.select('Jobs', 'A3');
  // The first answer is on its way when the next cell is selected.
  const asked = excel.syncs;
  await waitFor(() => expect(excel.syncs).toBeGreaterThan(asked));
  excel.select('Jobs', 'A5');
  await waitFor(() => expect(line()).toMatch(/^A5 HOSE\.CUTLENGTH/));
  observer.disconnect();
  expect(seen.filter(text => text?.startsWith('A3'))).toEqual([]);
});

test('with the pane its listener goes', async () => {
  const { excel, unmount } = open();
  await waitFor(() => expect(excel.listeners()).toBe(1));
  unmount();
  await waitFor(() => expect(excel.listeners()).toBe(0));
});
