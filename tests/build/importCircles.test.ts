import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { preProcessFile } from 'typescript';

const sources = join(__dirname, '../../src');
const files = readdirSync(sources, { recursive: true, encoding: 'utf8' })
  .filter(name => /\.tsx?$/.test(name))
  .map(name => join(sources, name));

/** Files of ours that a file imports, types included. */
function importsOf(file: string): string[] {
  const { importedFiles } = preProcessFile(readFileSync(file, 'utf8'));
  const named = importedFiles
    .filter(({ fileName }) => fileName.startsWith('.'))
    .map(({ fileName }) => join(dirname(file), fileName));
  return named.flatMap(path => [`${path}.ts`, `${path}.tsx`].filter(existsSync));
}

const graph = new Map(files.map(file => [file, importsOf(file)]));

/** What is left when files that import none of the rest, or that none of the rest imports, are taken away: circles, and ways between two. */
function onCircles(imports: ReadonlyMap<string, readonly string[]>): string[] {
  let left = [...imports.keys()];
  for (;;) {
    const here = new Set(left);
    const imported = new Set(left.flatMap(file => imports.get(file)!));
    const next = left.filter(file => imported.has(file) && imports.get(file)!.some(each => here.has(each)));
    if (next.length === left.length) return next;
    left = next;
  }
}

test('no file imports itself by way of others', () => {
  expect(files.length).toBeGreaterThan(500);
  expect([...graph.values()].flat().length).toBeGreaterThan(files.length);
  expect(onCircles(graph).map(file => file.slice(sources.length + 1))).toEqual([]);
});

test('a circle is found', () => {
  const drawn = { start: ['a'], a: ['b'], b: ['c'], c: ['a', 'end'], end: [] };
  expect(onCircles(new Map(Object.entries(drawn)))).toEqual(['a', 'b', 'c']);
});
