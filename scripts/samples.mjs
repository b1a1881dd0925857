// Writes the files of samples/ from samples/sources. Equal sources give equal bytes.
import { spawnSync } from 'node:child_process';

const write = `
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
const { samples } = await import('./samples/sources/samples.ts');
for (const [name, make] of Object.entries(samples)) {
  mkdirSync(dirname('samples/' + name), { recursive: true });
  writeFileSync('samples/' + name, await make());
  console.log('samples/' + name);
}`;
const done = spawnSync(process.execPath, ['--import', './scripts/typescriptLoader.mjs', '--input-type=module', '-e', write], {
  stdio: 'inherit',
});
process.exit(done.status ?? 1);
