import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';

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

/**
 * Starts a browser of the Chromium family: the installed one (chromium, Chrome or Edge), else the packaged one.
 * @throws Error where there is none: a browser test is never skipped
 */
export async function launch(): Promise<Browser> {
  const executablePath = installedBrowser();
  if (executablePath) return chromium.launch({ executablePath, args: FLAGS });
  const { default: packaged } = await import('@sparticuz/chromium');
  return chromium.launch({ executablePath: await packaged.executablePath(), args: FLAGS });
}
