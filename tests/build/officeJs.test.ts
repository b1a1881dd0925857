import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

const root = join(__dirname, '../..');

/** What scripts/officeJsFiles.mjs lists; the script is a module of Node, so it is asked in a process of its own. */
function listed(): { name: string; path: string }[] {
  const ask = `import('./scripts/officeJsFiles.mjs').then(({ officeJsFiles }) => console.log(JSON.stringify(officeJsFiles(process.cwd()))))`;
  return JSON.parse(execFileSync(process.execPath, ['-e', ask], { cwd: root, encoding: 'utf8' }));
}

test('OFFICE_JS=local takes the loader, one script a host, the functions’ runtime and the sentences of every language, no other product’s', () => {
  const names = listed().map(({ name }) => name);
  expect(names).toEqual(
    expect.arrayContaining([
      'office.js',
      'excel-web-16.00.js',
      'excel-win32-16.01.js',
      'excel-mac-16.00.js',
      'custom-functions-runtime.js',
      'en-us/office_strings.js',
      'de-de/office_strings.js',
    ]),
  );
  expect(names.filter(name => /word|powerpoint|outlook|onenote|debug/.test(name))).toEqual([]);
});

test('they exist, and are a small part of the package', () => {
  const files = listed();
  expect(files.filter(({ path }) => !existsSync(path))).toEqual([]);
  expect(files.reduce((sum, { path }) => sum + statSync(path).size, 0)).toBeLessThan(20e6);
});

test('the loader asks for no script of Excel on Windows, Mac or the web that is not among them', () => {
  const names = listed().map(({ name }) => name);
  const loader = readFileSync(join(root, 'node_modules/@microsoft/office-js/dist/office.js'), 'utf8');
  const asked = [...loader.matchAll(/["']((?:excel|o15)[a-z0-9.-]*\.js)["']/gi)].map(([, name]) => name!.toLowerCase());
  const current = asked.filter(
    name => /-16\.\d\d(-core)?\.js$|^o15apptofile/.test(name) && !/android|winrt|win32-16\.00/.test(name),
  );
  expect(current.filter(name => !names.includes(name))).toEqual([]);
  expect(loader).toMatch(/excel/i);
});
