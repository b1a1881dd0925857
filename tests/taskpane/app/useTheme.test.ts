/** @jest-environment ./tests/quickJsdom.mjs */
import { teamsHighContrastTheme, webDarkTheme, webLightTheme } from '@fluentui/react-components';
import { act, fireEvent, renderHook } from '@testing-library/react';
import { useTheme } from '../../../src/taskpane/app/useTheme';

const page = globalThis as { Office?: unknown; matchMedia?: unknown };

afterEach(() => {
  delete page.Office;
  delete page.matchMedia;
});

/** What the system asks for, and a way to change it. */
function system(...asked: string[]) {
  const listeners = new Set<() => void>();
  page.matchMedia = (query: string) => ({
    matches: asked.some(each => query.includes(each)),
    addEventListener: (_: string, listener: () => void) => listeners.add(listener),
    removeEventListener: (_: string, listener: () => void) => listeners.delete(listener),
  });
  const change = (...next: string[]) => {
    asked = next;
    for (const listener of listeners) listener();
  };
  return { change, listeners };
}

const inOffice = (bodyBackgroundColor?: string) => {
  page.Office = { context: bodyBackgroundColor ? { officeTheme: { bodyBackgroundColor } } : {} };
};
const theme = () => renderHook(useTheme).result.current;

test.each([
  ['a dark Office', '#262626', webDarkTheme],
  ['a light Office', '#F3F2F1', webLightTheme],
])('%s decides, whatever the system asks for', (_, background, expected) => {
  inOffice(background);
  for (const scheme of ['dark', 'light']) {
    system(`prefers-color-scheme: ${scheme}`);
    expect(theme()).toBe(expected);
  }
});

test('where there is no Office, or it does not tell, the system decides', () => {
  expect(theme()).toBe(webLightTheme);
  system('prefers-color-scheme: dark');
  expect(theme()).toBe(webDarkTheme);
  inOffice();
  expect(theme()).toBe(webDarkTheme);
});

test('high contrast goes before both', () => {
  inOffice('#262626');
  system('forced-colors: active');
  expect(theme()).toBe(teamsHighContrastTheme);
});

test('a change of the system is followed while the pane stands', () => {
  const { change, listeners } = system();
  const { result, unmount } = renderHook(useTheme);
  expect(result.current).toBe(webLightTheme);
  act(() => change('prefers-color-scheme: dark'));
  expect(result.current).toBe(webDarkTheme);
  unmount();
  expect(listeners.size).toBe(0);
});

test.each([
  ['a key that comes back to it', () => fireEvent.focus(window)],
  ['a pointer that comes back to it', () => fireEvent(document.documentElement, new Event('pointerenter'))],
  ['showing it again', () => fireEvent(document, new Event('visibilitychange', { bubbles: true }))],
])('a change of Office’s theme is followed: the pane looks again at %s', (_, comeBack) => {
  inOffice('#F3F2F1');
  const { result, unmount } = renderHook(useTheme);
  expect(result.current).toBe(webLightTheme);
  inOffice('#262626');
  act(() => void comeBack());
  expect(result.current).toBe(webDarkTheme);
  inOffice('#F3F2F1');
  unmount();
  act(() => void comeBack());
  expect(result.current).toBe(webDarkTheme);
});
