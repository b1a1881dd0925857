// Runs the benchmarks bench/*.bench.ts: all of them, or those named (`npm run bench -- causes`).
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { unpackBrowser } from '../tests/packagedBrowser.mjs';

await import('./typescriptLoader.mjs');
await unpackBrowser();

const names = process.argv.slice(2);
const found = readdirSync('bench')
  .filter(file => file.endsWith('.bench.ts'))
  .map(file => file.replace('.bench.ts', ''));
const wanted = names.length === 0 ? found : names;
for (const name of wanted) {
  if (!found.includes(name)) {
    console.error(`No benchmark "${name}"; there are: ${found.join(', ')}`);
    process.exit(1);
  }
  await import(pathToFileURL(join('bench', `${name}.bench.ts`)).href);
}
