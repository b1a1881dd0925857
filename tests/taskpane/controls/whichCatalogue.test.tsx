/** @jest-environment ./tests/quickJsdom.mjs */
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { readCrimpSheet } from '../../../src/sheets/crimps/crimpSheet';
import { TaskPane } from '../../../src/taskpane/app/TaskPane';
import { tabs } from '../../../src/taskpane/app/tabs';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { demoQuotes } from '../../sheets/quote/demoQuotes';
import { openPlace } from '../openPlace';

beforeEach(() => localStorage.clear());

const FORMULA = '=HOSE.CATALOGUE(Hoses!A1:P40,Fittings!A1:P40,Crimps!A1:P40)';
const { handle } = readCatalogue(treeTables);
const WHAT_IF: FakeCell[][] = [['With the rise', { formula: FORMULA, value: handle }]];

const QUESTION = /This workbook has 2 cells with =HOSE\.CATALOGUE/;
const isShown = (element: Element) => element.closest('[hidden]') === null;
const isAsked = () => screen.queryAllByText(QUESTION).some(isShown);

function open() {
  const fake = fakeWorkbook({ 'What-if': WHAT_IF, ...demoQuotes() }, { sheet: 'Jobs', address: 'A2' });
  render(<TaskPane workbook={fake.workbook} functions={[]} />);
  return fake;
}

test('of two catalogues each view that uses one asks which counts, until it is answered once for the workbook', async () => {
  const { remembered } = open();
  for (const place of ['quote/what-if', 'week/tags', 'bench/machine']) {
    await openPlace(place);
    await waitFor(() => expect([place, isAsked()]).toEqual([place, true]));
  }
  fireEvent.click(screen.getAllByText('What-if!B1', { selector: 'button' }).find(isShown)!);
  await waitFor(() => expect(isAsked()).toBe(false));
  expect(remembered.get('catalogue')).toBe('What-if!B1');
  for (const place of ['quote/what-if', 'week/tags']) {
    await openPlace(place);
    expect([place, isAsked()]).toEqual([place, false]);
  }
});

test('views that use no parts data do not ask', () => {
  const quiet = tabs.flatMap(({ views }) => views.filter(({ usesCatalogue }) => !usesCatalogue).map(({ id }) => id));
  expect(quiet).toEqual(['load', 'recall', 'gauges']);
});

test('readings are judged by the catalogue that was chosen', async () => {
  const [hoses, ...rest] = treeTables.hoses!;
  const other = readCatalogue({ ...treeTables, hoses: [hoses!, ...rest.slice(0, 1)] });
  const { workbook } = fakeWorkbook(
    {
      Other: [['Other', { formula: FORMULA.replace('Hoses!A1:P40', 'Hoses!A1:P2'), value: other.handle }]],
      ...demoQuotes(),
      Readings: [
        ['Hose', 'Target (mm)', 'Reading 1', 'Reading 2'],
        ['Alder', 25, 25.1, 25.2],
      ],
    },
    { sheet: 'Readings', address: 'A2' },
  );
  jest.spyOn(workbook, 'names').mockResolvedValue([{ name: 'Catalogue', at: { sheet: 'Parts', address: 'B1' } }]);
  const hosesIn = async () => (await readCrimpSheet(workbook))!.catalogue!.hoses.length;
  const before = await hosesIn();
  expect(before).toBeGreaterThan(1);
  await workbook.remember('catalogue', 'Other!B1');
  expect(await hosesIn()).toBe(1);
  await workbook.remember('catalogue', 'Parts!B1');
  expect(await hosesIn()).toBe(before);
});
