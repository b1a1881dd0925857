/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen } from '@testing-library/react';
import { StartupChoice } from '../../../src/taskpane/app/strip/StartupChoice';

/** Office that keeps with the document whether the add-in starts (Office.Addin, shared runtime 1.1). */
function openOffice(refuses = false) {
  const state = { behavior: 'None' };
  const addin = {
    getStartupBehavior: async () => state.behavior,
    setStartupBehavior: async (behavior: string) => {
      if (refuses) throw new Error('the document is read-only');
      state.behavior = behavior;
    },
  };
  Object.assign(globalThis, { Office: { addin, StartupBehavior: { none: 'None', load: 'Load' } } });
  return state;
}

const show = () =>
  render(
    <FluentProvider theme={webLightTheme}>
      <StartupChoice />
    </FluentProvider>,
  );
const choice = () => screen.findByRole('checkbox', { name: 'Start Benchrow with this workbook' });

afterEach(() => delete (globalThis as { Office?: unknown }).Office);

test('nothing starts by itself before somebody chooses so; then the workbook keeps it, and can forget it', async () => {
  const state = openOffice();
  show();
  expect(((await choice()) as HTMLInputElement).checked).toBe(false);
  expect(state.behavior).toBe('None');
  fireEvent.click(await choice());
  expect(await screen.findByText('Save the workbook to keep this.')).toBeTruthy();
  expect(state.behavior).toBe('Load');
  fireEvent.click(await choice());
  await screen.findByRole('checkbox', { checked: false });
  expect(state.behavior).toBe('None');
});

test('a refusal is said, and the choice stays as it was', async () => {
  openOffice(true);
  show();
  fireEvent.click(await choice());
  expect(await screen.findByText('Excel did not take it: the document is read-only')).toBeTruthy();
  expect(((await choice()) as HTMLInputElement).checked).toBe(false);
});

test('where there is no such choice, as on the try-out page, none is shown', async () => {
  show();
  await Promise.resolve();
  expect(screen.queryByRole('checkbox')).toBeNull();
});
