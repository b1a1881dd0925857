import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(__dirname, '../..');
const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const section = (title: string) => page.split(/^## /m).find(part => part.startsWith(title))!;

/** The lines of the tree that are about one folder: its own, and those set in below it. */
function branch(folder: string): string {
  const lines = section('The tree').split('\n');
  const from = lines.findIndex(line => line.startsWith(`${folder}/ `));
  const more = lines.slice(from + 1).findIndex(line => !line.startsWith('  '));
  return lines.slice(from, from + 1 + more).join('\n');
}

test.each(['src/core', 'src/sheets', 'src/host', 'src/preview', 'src/taskpane'])('the tree names the folders of %s', folder => {
  const named = [...branch(folder).matchAll(/(?<=\s)(\w+)\/(?=\s|$)/g)].map(([, name]) => name!);
  const standing = readdirSync(join(root, folder), { withFileTypes: true }).flatMap(entry =>
    entry.isDirectory() ? [entry.name] : [],
  );
  expect(named.sort()).toEqual(standing.sort());
});

test('files and folders that the page names are there', () => {
  const files = ['src', 'tests', 'scripts', 'samples', 'bench'].flatMap(folder =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map(path => `/${folder}/${path}`),
  );
  files.push(...readdirSync(root).map(name => `/${name}`));
  const named = [...page.matchAll(/`([\w/.-]+\.(?:tsx?|mjs|js)|(?:src|tests|scripts|samples|bench)\/[\w/.-]+)`/g)].map(
    ([, name]) => name!,
  );
  const built = ['functions.js'];
  expect(named.length).toBeGreaterThan(60);
  expect(named.filter(name => !built.includes(name) && !files.some(path => path.endsWith(`/${name}`)))).toEqual([]);
});

/** What the page calls packages that come in several. */
function familyOf(name: string): string {
  if (name.startsWith('@fluentui/')) return 'Fluent UI';
  if (name.startsWith('@univerjs/')) return 'Univer';
  return name.startsWith('react') ? 'React' : name;
}

test('the page says of every library that the add-in is built with what it is for', () => {
  const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const table = section('Libraries');
  expect(Object.keys(dependencies).filter(name => !table.includes(familyOf(name)))).toEqual([]);
});
