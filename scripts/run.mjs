// Runs one of the project's scripts; installs what is missing first, so that it works right after the clone.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { installPackages } from './installPackages.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
process.chdir(root);

const [major, minor] = process.versions.node.split('.').map(Number);
const oldest = { 20: 19, 22: 12 };
if (major < 23 && !(minor >= oldest[major])) {
  console.error(`Benchrow needs Node.js 20.19, 22.12 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const [name, ...args] = process.argv.slice(2);
const script = join(root, 'scripts', `${name}.mjs`);
if (!existsSync(script)) {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  console.error(`There is no script "${name}"; there are: ${Object.keys(scripts).join(', ')}`);
  process.exit(1);
}

await installPackages(root, 'First start', 1100);
process.argv = [process.argv[0], script, ...args];
try {
  await import(pathToFileURL(script).href);
} catch (error) {
  // A wrong setting needs its sentence only, a defect its whole trace.
  console.error(error.name === 'SettingError' ? error.message : error);
  process.exit(1);
}
