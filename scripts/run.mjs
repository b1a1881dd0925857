// Runs one of the project's scripts; installs what is missing first, so that it works right after the clone.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 11)) {
  console.error(`Benchrow needs Node.js 20.11 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const stamp = join(root, 'node_modules', '.benchrow-installed');
const wanted = createHash('sha256')
  .update(readFileSync(join(root, 'package-lock.json')))
  .digest('hex');
// A second working tree may link to the first one's packages; installing through the link would empty them for both.
const linked = lstatSync(join(root, 'node_modules'), { throwIfNoEntry: false })?.isSymbolicLink();
if (!linked && (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== wanted)) {
  console.log('Installing packages (npm ci); the first time this takes a few minutes …');
  const done = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { stdio: 'inherit', shell: process.platform === 'win32' });
  if (done.status !== 0) process.exit(done.status ?? 1);
  writeFileSync(stamp, wanted);
}

const [name, ...args] = process.argv.slice(2);
process.argv = [process.argv[0], join(root, 'scripts', `${name}.mjs`), ...args];
await import(pathToFileURL(join(root, 'scripts', `${name}.mjs`)).href);
