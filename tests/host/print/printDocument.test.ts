/** @jest-environment ./tests/quickJsdom.mjs */
import { canPrint, printDocument } from '../../../src/host/print/printDocument';

type Printing = (view: Window) => void;

/** A page whose frames print as this host does; jsdom loads what a frame shows, but prints nothing. */
function host(print: Printing): void {
  jest.spyOn(document.body, 'append').mockImplementation((...nodes) => {
    for (const node of nodes) {
      document.body.appendChild(node as Node);
      const frame = node as HTMLIFrameElement;
      const view = frame.contentWindow!;
      view.focus = () => undefined;
      view.print = () => print(view);
      frame.onload!(new Event('load'));
    }
  });
}

const frames = () => document.querySelectorAll('iframe[title="Page to print"]').length;
const begins: Printing = view => void view.dispatchEvent(new Event('beforeprint'));

beforeEach(() => jest.useFakeTimers());
afterEach(() => {
  jest.useRealTimers();
  jest.restoreAllMocks();
  document.body.replaceChildren();
  delete (globalThis as { Office?: unknown }).Office;
});

test.each<[string, Printing]>([
  ['while it is asked', begins],
  // Chromium does so.
  ['after it has returned', view => void setTimeout(() => begins(view), 50)],
])('a host that says %s that it prints has printed', async (_, print) => {
  host(print);
  const printed = printDocument('<p>card</p>');
  await jest.advanceTimersByTimeAsync(100);
  expect(await printed).toBe(true);
  expect(frames()).toBe(1);
});

test('a host that returns and says nothing has not printed, and keeps no page', async () => {
  host(() => undefined);
  const printed = printDocument('<p>card</p>');
  await jest.advanceTimersByTimeAsync(10_000);
  expect(await printed).toBe(false);
  expect(frames()).toBe(0);
});

test('a host that refuses to print has not printed', async () => {
  host(() => {
    throw new Error('no printing here');
  });
  expect(await printDocument('<p>card</p>')).toBe(false);
});

// OfficeDev/office-js issue 3385: no print, no download, no error.
test.each([
  ['Mac', false],
  ['PC', true],
  ['OfficeOnline', true],
])('in Excel on %s there is a print window: %s', async (platform, expected) => {
  const PlatformType = { Mac: 'Mac', iOS: 'iOS', PC: 'PC', OfficeOnline: 'OfficeOnline' };
  Object.assign(globalThis, { Office: { PlatformType, context: { platform } } });
  host(begins);
  expect(canPrint()).toBe(expected);
  expect(await printDocument('<p>card</p>')).toBe(expected);
  expect(frames()).toBe(expected ? 1 : 0);
});
