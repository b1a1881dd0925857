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

const [name, ...args] = process.argv.slice(2);
const script = join(root, 'scripts', `${name}.mjs`);
if (!existsSync(script)) {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  console.error(`There is no script "${name}"; there are: ${Object.keys(scripts).join(', ')}`);
  process.exit(1);
}

installMissing();
process.argv = [process.argv[0], script, ...args];
try {
  await import(pathToFileURL(script).href);
} catch (error) {
  // A wrong setting needs its sentence only, a defect its whole trace.
  console.error(error.name === 'SettingError' ? error.message : error);
  process.exit(1);
}

/** Installs the packages of package-lock.json unless exactly these are there already. */
function installMissing() {
  const stamp = join(root, 'node_modules', '.benchrow-installed');
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  // A second working tree may link to the first one's packages; installing through the link would empty them for both.
  const linked = lstatSync(join(root, 'node_modules'), { throwIfNoEntry: false })?.isSymbolicLink();
  if (linked || (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted)) return;
  console.log('Installing packages (npm ci); the first time this takes a few minutes …');
  // Development packages too, whatever NODE_ENV says: without them nothing can be built.
  const npmArguments = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const npmScript = process.env.npm_execpath;
  // The npm that runs this script; run by hand under Windows, npm is a .cmd file, which needs a shell.
  const done = npmScript?.endsWith('.js')
    ? spawnSync(process.execPath, [npmScript, ...npmArguments], { stdio: 'inherit' })
    : spawnSync('npm', npmArguments, { stdio: 'inherit', shell: process.platform === 'win32' });
  if (done.status !== 0) {
    console.error('The packages could not be installed: see above. Without a connection to the npm registry this cannot work.');
    process.exit(done.status ?? 1);
  }
  writeFileSync(stamp, wanted);
}
