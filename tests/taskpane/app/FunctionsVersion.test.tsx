/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { fireEvent, render, screen, waitFor } from '@testing-library/react';
import { FunctionsVersion } from '../../../src/taskpane/app/FunctionsVersion';

// The setting's name: learn.microsoft.com, office/dev/add-ins/excel/custom-functions-troubleshooting.
const SETTING = 'Office.ForceRefreshCustomFunctionsCache';

interface FakeOffice {
  /** Settings as the workbook keeps them. */
  readonly kept: Record<string, unknown>;
  refuses: boolean;
}

/** Office with settings that are kept when they were saved, or one that is too old for them. */
function openOffice(hasSharedRuntime = true): FakeOffice {
  const office: FakeOffice = { kept: {}, refuses: false };
  let waiting: Record<string, unknown> = {};
  const settings = {
    get: (name: string) => office.kept[name] ?? null,
    set: (name: string, value: unknown) => (waiting = { ...waiting, [name]: value }),
    saveAsync: (done: (result: object) => void) => {
      if (office.refuses) return done({ status: 'failed', error: { message: 'the workbook is read-only' } });
      Object.assign(office.kept, waiting);
      done({ status: 'succeeded' });
    },
  };
  const requirements = { isSetSupported: (set: string) => set === 'SharedRuntime' && hasSharedRuntime };
  Object.assign(globalThis, {
    Office: { AsyncResultStatus: { Failed: 'failed' }, context: { document: { settings }, requirements } },
  });
  return office;
}

/** Shows the notice of a pane of version 1.1.0 beside functions of a version. */
function show(functions: string | undefined) {
  Object.assign(globalThis, { benchrowFunctions: {}, benchrowVersion: functions });
  return render(
    <FluentProvider theme={webLightTheme}>
      <FunctionsVersion version="1.1.0" />
    </FluentProvider>,
  );
}

const seen = (version: string) => localStorage.setItem('benchrow.version', JSON.stringify({ seen: version }));

beforeEach(() => localStorage.clear());
afterEach(() => {
  for (const name of ['Office', 'benchrowFunctions', 'benchrowVersion']) delete (globalThis as Record<string, unknown>)[name];
});

test('functions of the pane’s own version are not talked about', () => {
  openOffice();
  show('1.1.0');
  expect(screen.queryByRole('status')).toBeNull();
});

// undefined: functions from before there was a version in them.
test.each(['1.0.0', undefined])(
  'functions of version %s are told; pressed, Excel fetches them anew at the next opening',
  async version => {
    const office = openOffice();
    show(version);
    expect(screen.getByRole('status').textContent).toMatch(/of another version than this pane.*within 24 hours/);
    fireEvent.click(screen.getByRole('button', { name: 'Fetch them now' }));
    await waitFor(() => expect(screen.getByRole('status').textContent).toMatch(/^Save the workbook, close it and open it again/));
    expect(office.kept[SETTING]).toBe(true);
  },
);

test('after that it is not forced at each opening', async () => {
  const office = openOffice();
  office.kept[SETTING] = true;
  seen('1.1.0');
  show('1.1.0');
  await waitFor(() => expect(office.kept[SETTING]).toBe(false));
});

test('the first start after an update says that the list of functions may be old, once', () => {
  openOffice();
  seen('1.0.0');
  const { unmount } = show('1.1.0');
  expect(screen.getByRole('status').textContent).toMatch(/^Benchrow was updated/);
  fireEvent.click(screen.getByRole('button', { name: 'Close' }));
  expect(screen.queryByRole('status')).toBeNull();
  unmount();
  show('1.1.0');
  expect(screen.queryByRole('status')).toBeNull();
});

test('an Office without a shared runtime is told to wait, and offered nothing that it cannot do', () => {
  openOffice(false);
  show('1.0.0');
  expect(screen.getByRole('status').textContent).toMatch(/within 24 hours/);
  expect(screen.queryByRole('button', { name: 'Fetch them now' })).toBeNull();
});

test('a refusal is said', async () => {
  openOffice().refuses = true;
  show('1.0.0');
  fireEvent.click(screen.getByRole('button', { name: 'Fetch them now' }));
  await waitFor(() => expect(screen.getByRole('status').textContent).toBe('Excel did not take it: the workbook is read-only'));
});
