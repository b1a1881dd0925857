// dist/: everything a static HTTPS host needs. BASE_URL says where it will stand.
import { rmSync, writeFileSync } from 'node:fs';
import { rspack } from '@rspack/core';
import rspackConfig from '../rspack.config.js';
import { licences } from './licences.mjs';

const mode = process.argv.includes('--development') ? 'development' : 'production';
const compiler = rspack(rspackConfig({}, { mode }));

console.log(`Building dist/ (${mode}) …`);
// Nothing of an earlier build may go along to the host.
rmSync('dist', { recursive: true, force: true });
const stats = await new Promise((done, fail) => compiler.run((error, result) => (error ? fail(error) : done(result))));
await new Promise(done => compiler.close(done));

if (stats.hasErrors() || stats.hasWarnings()) console.error(stats.toString('errors-warnings'));
if (stats.hasErrors()) process.exit(1);
writeFileSync(
  'dist/licences.txt',
  licences(
    process.cwd(),
    stats.stats.map(({ compilation }) => compilation),
  ),
);
for (const { compilation } of stats.stats) {
  const kilobytes = compilation.getAssets().reduce((sum, { source }) => sum + source.size(), 0) / 1000;
  console.log(`  ${compilation.name}: ${compilation.getAssets().length} files, ${Math.round(kilobytes)} kB`);
}
