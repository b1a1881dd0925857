import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rspack } from '@rspack/core';
import { madeOnce } from './madeOnce.mjs';

/* Jest loads a library's files one by one and anew for every test file: seconds for those of thousands of files. Here each is packed into one file before
   the first test, once for each state of package-lock.json. */

const root = fileURLToPath(new URL('..', import.meta.url));
const sources = join(root, 'src');

/** Icons are taken by name: all of them would be 20 MB. */
function iconNames() {
  const files = readdirSync(sources, { recursive: true, encoding: 'utf8' }).filter(name => /\.tsx?$/.test(name));
  const lists = files.flatMap(name => [
    ...readFileSync(join(sources, name), 'utf8').matchAll(/import \{([^}]*)\} from '@fluentui\/react-icons'/g),
  ]);
  return [...new Set(lists.flatMap(([, list]) => list.match(/\w+/g)))].sort();
}

/** Packages that share state are packed together. */
const GROUPS = {
  fluent: { '@fluentui/react-components': '*', '@fluentui/react-icons': `{ ${iconNames().join(', ')} }` },
  univer: Object.fromEntries(
    [
      'core',
      'core/facade',
      'engine-formula',
      'engine-formula/facade',
      'sheets',
      'sheets/facade',
      'sheets-formula',
      'sheets-formula/facade',
      'sheets-sort',
      'sheets-sort/facade',
      'sheets-filter',
      'sheets-filter/facade',
    ].map(name => [`@univerjs/${name}`, '*']),
  ),
  plot: { '@observablehq/plot': '*' },
  exceljs: { exceljs: '{ default, Workbook }' },
};
/** What tests and libraries must share is left to Jest. */
const SHARED = ['react', 'react-dom', 'react/jsx-runtime', 'react-dom/client', 'scheduler'];

const folder = (() => {
  const hash = createHash('sha256');
  for (const file of ['package-lock.json', 'tests/packedLibraries.mjs']) hash.update(readFileSync(join(root, file)));
  hash.update(JSON.stringify(GROUPS));
  return join(root, 'node_modules/.cache/benchrow-tests', hash.digest('hex').slice(0, 16));
})();

const nameOf = library => `${library.replace(/^@/, '').replace(/\W/g, '-')}.cjs`;

/** Jest's `moduleNameMapper` for the packed libraries. */
export const packedModules = Object.fromEntries(
  Object.values(GROUPS).flatMap(group => Object.keys(group).map(library => [`^${library}$`, join(folder, nameOf(library))])),
);

/** Packs a group: one file with all of it, and one for each library that hands its part on. */
async function pack(name, group, into) {
  const libraries = Object.entries(group);
  const file = `packed-${name}.cjs`;
  const entry = join(into, `${name}.mjs`);
  libraries.forEach(([library, part], k) => writeFileSync(join(into, `${name}-${k}.mjs`), `export ${part} from '${library}';\n`));
  writeFileSync(entry, libraries.map((_, k) => `export * as part${k} from './${name}-${k}.mjs';\n`).join(''));
  const stats = await new Promise((resolve, reject) =>
    rspack(
      {
        mode: 'production',
        target: 'node20',
        context: root,
        entry,
        output: { path: into, filename: file, library: { type: 'commonjs2' } },
        externals: [...SHARED, ...builtinModules],
        externalsType: 'commonjs2',
        resolve: { modules: ['node_modules', join(root, 'node_modules')] },
        // Behaviour and names as they come, only smaller: the time that remains is that of reading the file.
        optimization: {
          nodeEnv: false,
          splitChunks: false,
          minimizer: [
            new rspack.SwcJsMinimizerRspackPlugin({
              extractComments: false,
              minimizerOptions: { mangle: false, format: { ascii_only: true } },
            }),
          ],
        },
        plugins: [
          new rspack.optimize.LimitChunkCountPlugin({ maxChunks: 1 }),
          // Rules of hyphenation, loaded on demand where a page sets text: half of all that would be packed.
          new rspack.IgnorePlugin({ resourceRegExp: /^\.\/[\w-]+\.js$/, contextRegExp: /@univerjs.engine-render/ }),
        ],
        performance: { hints: false },
      },
      (error, stats) => (error ? reject(error) : resolve(stats)),
    ),
  );
  if (stats.hasErrors()) throw new Error(stats.toString({ all: false, errors: true }));
  libraries.forEach(([library], k) =>
    writeFileSync(join(into, nameOf(library)), `module.exports = require('./${file}').part${k};\n`),
  );
}

/** Packs all groups, unless that was done. */
export function packLibraries() {
  return madeOnce(folder, async into => {
    const started = Date.now();
    for (const [name, group] of Object.entries(GROUPS)) await pack(name, group, into);
    console.log(`Libraries packed for the tests in ${((Date.now() - started) / 1000).toFixed(0)} s`);
    return true;
  });
}
