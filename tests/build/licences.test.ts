import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { builtFile } from '../builtFile';

const root = join(__dirname, '../..');
const text = readFileSync(builtFile('licences.txt'), 'utf8');
const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { dependencies: Record<string, string> };

/** Package, version and licence of every line that names one. */
const named = [...text.matchAll(/^((?:@[\w-]+\/)?[\w.-]+) (\d+\.\d+\.\d+\S*)(?: \((.*)\))?$/gm)].map(
  ([, name, version, licence]) => ({ name: name!, version: version!, licence }),
);

test('our licence comes first, then every library that we ship, in its version', () => {
  expect(text.startsWith(`Benchrow\n\n${readFileSync(join(root, 'LICENSE'), 'utf8').trim()}`)).toBe(true);
  const versions = new Map(named.map(({ name, version }) => [name, version]));
  const missing = Object.entries(dependencies).filter(([name, version]) => versions.get(name) !== version);
  // This one only hands on what its siblings hold, and nothing of it is left in a bundle.
  expect(missing.map(([name]) => name)).toEqual(['@fluentui/react-components']);
});

test('what libraries bring along is named too, also what comes inside their own bundles', () => {
  const names = named.map(({ name }) => name);
  // d3 comes with the plots, scheduler with React, jszip inside exceljs.
  expect(names).toEqual(expect.arrayContaining(['d3-array', 'scheduler', 'jszip']));
});

test('no package asks for more than its notice', () => {
  const free = /\b(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0|Unlicense|CC0-1\.0|Zlib|BlueOak-1\.0\.0)\b/;
  expect(named.filter(({ licence }) => licence !== undefined && !free.test(licence))).toEqual([]);
  expect(named.filter(({ licence }) => licence === undefined)).toEqual([]);
  // Its package.json names none; its licence file has the words.
  expect(named.find(({ name }) => name === '@univerjs/telemetry')?.licence).toBe('Apache-2.0');
});

test.each([
  ['decimal.js', 'Michael Mclaughlin'],
  ['react', 'Facebook, Inc. and its affiliates'],
  ['@univerjs/core', 'Apache License'],
  ['@observablehq/plot', 'Observable, Inc.'],
])('the words of the licence of %s stand below its name', (name, holder) => {
  const section = text.split(/^-{80}$/m).find(part => new RegExp(`^${name} \\d`, 'm').test(part));
  expect(section).toContain(holder);
});
