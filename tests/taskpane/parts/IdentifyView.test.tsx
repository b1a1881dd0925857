/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, within } from '@testing-library/react';
import { IdentifyView } from '../../../src/taskpane/parts/IdentifyView';
import { LiveWorkbook } from '../../sheets/parts/liveWorkbook';
import { standingWorkbook } from '../../sheets/parts/standingWorkbook';
import { viewProps } from '../viewProps';

beforeEach(() => localStorage.clear());

function open(workbook: LiveWorkbook, goTo: (place: string) => void = () => undefined) {
  render(
    <FluentProvider theme={webLightTheme}>
      <IdentifyView {...viewProps(workbook)} goTo={goTo} />
    </FluentProvider>,
  );
}

const fill = (label: string, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });
const items = (list: string) =>
  within(screen.getByLabelText(list))
    .getAllByRole('listitem')
    .map(item => item.textContent);

test('a thread is named with the parts that have it, a hose with how far it is off', async () => {
  open(standingWorkbook());
  await screen.findByRole('region', { name: 'Hose' });
  fill('Outside diameter (mm)', '22');
  fill('Pitch (mm)', '1,5');
  expect(items('Threads it may be')).toEqual([
    expect.stringMatching(
      /^M22x1.5 \(ISO 261\): 22 mm, pitch 1.5 mm, off by 0 mm.*Alder cone straight DN 12, Alder cone elbow DN 12$/,
    ),
  ]);
  fill('Bore (mm)', '12.5');
  expect(items('Hoses it may be')).toEqual(['Alder DN 12: bore 12.7 mm (-0.2 mm); 275 bar']);
  expect(screen.getByText(/does not make a part right/)).toBeTruthy();
});

test('the unit changes what is asked for, and a mistake is said at its field', async () => {
  open(standingWorkbook());
  await screen.findByRole('region', { name: 'Hose' });
  fill('Unit', 'in');
  fill('Thread is', 'female');
  fill('Inside diameter (in)', 'x');
  expect(screen.getByText(/^Size is "x": enter a number/)).toBeTruthy();
  expect(screen.getByLabelText('Threads per inch')).toBeTruthy();
});

test('without parts data the standards answer, and the way to load is offered', async () => {
  const gone: string[] = [];
  open(new LiveWorkbook({ Sheet1: [] }), place => gone.push(place));
  fireEvent.click(await screen.findByRole('button', { name: 'Load parts data' }));
  expect(gone).toEqual(['parts/load']);
  fill('Outside diameter (mm)', '33.3');
  expect(screen.getByText(/Count the threads: 12 per inch or 11 per inch/)).toBeTruthy();
  expect(screen.queryByRole('region', { name: 'Hose' })).toBeNull();
});
