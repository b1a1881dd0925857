import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The files of @microsoft/office-js that Excel asks for: loader, one script a host, the functions' runtime, sentences by language. */
const NEEDED = [
  /^office\.js$/,
  /^o15apptofilemappingtable\.js$/,
  /^es6-promise\.js$/,
  /^custom-functions-runtime\.js$/,
  /^excel-(web|win32|mac|ios)-16\.\d\d(-core)?\.js$/,
  /^telemetry\/[^/]+\.js$/,
  /^[a-z]{2,3}-[a-z]+(-[a-z]+)?\/office_strings\.js$/,
];

/**
 * Office.js for an intranet that cannot reach Microsoft's CDN (OFFICE_JS=local): about 70 small and a dozen large files of its 87 MB.
 * @param {string} root the project's folder
 * @returns {{ name: string, path: string }[]} name below office-js/, and where the file stands
 */
export function officeJsFiles(root) {
  const folder = join(root, 'node_modules/@microsoft/office-js/dist');
  return readdirSync(folder, { recursive: true })
    .map(name => name.replaceAll('\\', '/'))
    .filter(name => !name.includes('.debug.') && NEEDED.some(pattern => pattern.test(name)))
    .sort()
    .map(name => ({ name, path: join(folder, name) }));
}

/** Where the pages load Office.js from. */
export const officeJsUrl = local =>
  local ? 'office-js/office.js' : 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';
