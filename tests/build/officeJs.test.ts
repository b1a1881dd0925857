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

const loader = readFileSync(join(root, 'node_modules/@microsoft/office-js/dist/office.js'), 'utf8');

/** `key:"value"` pairs of an object that stands in the loader's text. */
function pairsIn(object: RegExp): [key: string, value: string][] {
  const [, text] = object.exec(loader) ?? [];
  return [...(text ?? '').matchAll(/"?([\w-]+)"?:"?([\w.]+)"?/g)].map(([, key, value]) => [key!, value!]);
}

// The loader itself tells which script it takes for Excel: by platform, in this version.
const platforms = pairsIn(/HostSpecificFileVersionMap=\{.*?excel:\{([^}]*)\}/);

test('the loader names a script for Excel on Windows, Mac and the web, and each is among the files', () => {
  expect(platforms.map(([platform]) => platform)).toEqual(expect.arrayContaining(['win32', 'mac', 'web', 'ios']));
  const names = new Set(listed().map(({ name }) => name));
  // winrt: the app for Windows phones and tablets of 2015, which has no custom functions.
  const needed = platforms.filter(([platform]) => platform !== 'winrt');
  const files = needed.map(([platform, version]) => `excel-${platform}-${version}.js`);
  expect(files.filter(name => !names.has(name))).toEqual([]);
});

test('the sentences of every language that the loader knows are among the files', () => {
  const languages = pairsIn(/SupportedLocales=\{([^}]*)\}/).map(([language]) => language.toLowerCase());
  expect(languages.length).toBeGreaterThan(50);
  const names = new Set(listed().map(({ name }) => name));
  expect(languages.filter(language => !names.has(`${language}/office_strings.js`))).toEqual([]);
});
