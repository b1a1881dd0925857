/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { hostServices } from '../../../src/taskpane/app/hostServices';
import { OutputButtons } from '../../../src/taskpane/controls/OutputButtons';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';

const { workbook } = fakeWorkbook({ Jobs: [['Hose']] }, { sheet: 'Jobs', address: 'A1' });

function show(canPrint: boolean, isPrinted: boolean) {
  const print = jest.fn(async () => isPrinted);
  render(
    <FluentProvider theme={webLightTheme}>
      <OutputButtons
        workbook={workbook}
        services={{ ...hostServices, canPrint: () => canPrint, print }}
        page={async () => '<p>card</p>'}
        onWrite={async () => 'Bench cards'}
        printLabel="Print cards"
        writeLabel="Write as a new sheet"
      />
    </FluentProvider>,
  );
  return print;
}

test('a print that was begun is not talked about', async () => {
  const print = show(true, true);
  fireEvent.click(screen.getByRole('button', { name: 'Print cards' }));
  await waitFor(() => expect(print).toHaveBeenCalledWith('<p>card</p>'));
  expect(screen.queryByText(/Nothing was printed/)).toBeNull();
});

test('where no print window opens, that is said with what to do instead', async () => {
  show(true, false);
  fireEvent.click(screen.getByRole('button', { name: 'Print cards' }));
  expect(await screen.findByText(/Nothing was printed: no print window opened here. Write it as a new sheet/)).toBeTruthy();
});

test('where a pane cannot print (Excel for Mac) the sheet is what is offered', async () => {
  show(false, false);
  expect(screen.queryByRole('button', { name: 'Print cards' })).toBeNull();
  expect(screen.getByText(/This Excel does not print from a pane: write a new sheet and print that sheet/)).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Write as a new sheet' }));
  expect(await screen.findByText('Bench cards')).toBeTruthy();
});
