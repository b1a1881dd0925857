import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser, type BrowserContext } from 'playwright-core';
import { PACKAGED_BROWSER } from '../packagedBrowser.mjs';

/** Quiet and offline: no updates, no background traffic. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'chrome.exe',
  'msedge.exe',
];

/** Where browsers stand that are not on the PATH. */
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap(folder =>
    ['Google/Chrome/Application/chrome.exe', 'Microsoft/Edge/Application/msedge.exe'].map(path =>
      join(process.env[folder] ?? '', path),
    ),
  ),
];

function installedBrowser(): string | undefined {
  const folders = (process.env.PATH ?? '').split(process.platform === 'win32' ? ';' : ':');
  const onPath = folders.flatMap(folder => NAMES.map(name => join(folder, name)));
  return [...onPath, ...PLACES].find(path => existsSync(path));
}

const chosen = process.env.TEST_BROWSER || (existsSync(PACKAGED_BROWSER) ? PACKAGED_BROWSER : installedBrowser());

/**
 * Starts a browser of the Chromium family: the one that TEST_BROWSER names (its path), else the packaged one, else an installed one
 * (chromium, Chrome or Edge).
 * @throws Error where there is none: a browser test is never skipped
 */
export function launch(): Promise<Browser> {
  if (!chosen) {
    throw new Error('There is no browser to test with: install Chromium, Chrome or Edge, or name one in TEST_BROWSER.');
  }
  return chromium.launch({ executablePath: chosen, args: FLAGS });
}

/** Lets pages print: the packaged browser has no print window and would not say that it prints. */
export async function letPrint(context: BrowserContext): Promise<void> {
  if (chosen !== PACKAGED_BROWSER) return;
  await context.addInitScript(() => {
    window.print = () => void window.dispatchEvent(new Event('beforeprint'));
  });
}
