import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

const LICENCE_FILE = /^(licen[cs]e|copying|notice)(\.(md|markdown|txt))?$/i;

/** Folder of the package that a file belongs to; undefined for our own files. */
const packageFolder = file => /^(?:.*[\\/])?node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(file ?? '')?.[0];

/** Paths of all modules that got into a file of a compilation. */
function moduleFiles({ modules, chunkGraph }) {
  const used = [...modules].filter(module => chunkGraph.getModuleChunks(module).length > 0);
  return used.flatMap(module => [...(module.modules ?? [module])]).map(({ resource }) => resource);
}

/** Where a package finds one that it depends on: in its own node_modules, or in one further up. */
function dependencyFolder(name, from) {
  const folder = join(from, 'node_modules', name);
  if (existsSync(folder)) return folder;
  return dirname(from) === from ? undefined : dependencyFolder(name, dirname(from));
}

/** Name, licence and the licence's words of a package. */
function licenceOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const files = readdirSync(folder).filter(file => LICENCE_FILE.test(file));
  const words = files.map(file => readFileSync(join(folder, file), 'utf8').trim()).join('\n\n');
  if (!license && !words) throw new Error(`${name} says nothing about its licence: it must not be shipped`);
  // A package that names no licence but brings its words (@univerjs/telemetry, an interface without code) is named by them.
  const named = license ?? (/Apache License\s+Version 2\.0/.test(words) ? 'Apache-2.0' : undefined);
  return { title: `${name} ${version}${named ? ` (${named})` : ''}`, words: words || 'It brings no text of its licence.' };
}

/** Packages inside a file that is a bundle itself, as exceljs comes: its source map names them, some are among ours. */
function licencesInside(file) {
  if (!file?.endsWith('.min.js') || !existsSync(`${file}.map`)) return [];
  const { sources } = JSON.parse(readFileSync(`${file}.map`, 'utf8'));
  const names = [...new Set(sources.map(packageFolder))].filter(Boolean).map(folder => folder.split(/node_modules[\\/]/).at(-1));
  return names.map(name => {
    const folder = dependencyFolder(name, dirname(file));
    return folder ? licenceOf(folder) : { title: name, words: `Inside ${basename(file)}, which its makers put together.` };
  });
}

/**
 * What dist/ holds of others: every package of which a part got into a bundle, with its licence.
 * @param {string} root the project's folder
 * @param {import('@rspack/core').Compilation[]} compilations finished ones
 * @returns {string} licences.txt
 */
export function licences(root, compilations) {
  const files = [...new Set(compilations.flatMap(moduleFiles))];
  const folders = [...new Set(files.map(packageFolder))].filter(Boolean);
  const wordsOf = new Map(
    [...folders.map(licenceOf), ...files.flatMap(licencesInside)].map(({ title, words }) => [title, words]),
  );
  // Packages of one maker mostly bring the same words.
  const titlesOf = new Map();
  for (const title of [...wordsOf.keys()].sort()) {
    const words = wordsOf.get(title);
    titlesOf.set(words, [...(titlesOf.get(words) ?? []), title]);
  }
  return [
    `Benchrow\n\n${readFileSync(join(root, 'LICENSE'), 'utf8').trim()}`,
    'The files beside this one contain the packages below, or parts of them.',
    ...[...titlesOf].map(([words, titles]) => `${titles.join('\n')}\n\n${words}`),
  ].join(`\n\n${'-'.repeat(80)}\n\n`);
}
