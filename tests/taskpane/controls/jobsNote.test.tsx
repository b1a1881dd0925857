/** @jest-environment jsdom */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen } from '@testing-library/react';
import type { ComponentType } from 'react';
import type { ViewProps } from '../../../src/taskpane/controls/viewProps';
import { PurchaseView } from '../../../src/taskpane/quote/PurchaseView';
import { QuoteView } from '../../../src/taskpane/quote/QuoteView';
import { CardsView } from '../../../src/taskpane/week/CardsView';
import { OrderView } from '../../../src/taskpane/week/OrderView';
import { TagsView } from '../../../src/taskpane/week/TagsView';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

const JOBS = [
  ['Hose', 'Coupling A', 'Coupling B', 'Cut length (mm)', 'Qty'],
  ['Larch DN 12', 'cone', 'cone', 900, 4],
  ['Larch DN 12', 'cone', '', 700, 2],
];

test.each<[string, ComponentType<ViewProps>]>([
  ['Quote', QuoteView],
  ['To buy', PurchaseView],
  ['Order', OrderView],
  ['Cards', CardsView],
  ['Tags', TagsView],
])('%s asks about lines with one coupling, and takes them', async (_, View) => {
  const { workbook } = fakeWorkbook({ Jobs: JOBS }, { sheet: 'Jobs', address: 'A2' });
  render(
    <FluentProvider theme={webLightTheme}>
      <View {...viewProps(workbook)} />
    </FluentProvider>,
  );
  await screen.findByText(/1 row taken; left out: 1 STOP/);
  fireEvent.click(screen.getByLabelText('Lines with one coupling: the other end stays plain hose'));
  expect(await screen.findByText(/2 rows taken/)).toBeTruthy();
});
