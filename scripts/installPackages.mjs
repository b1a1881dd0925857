import { spawn } from 'node:child_process';
import { existsSync, lstatSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const MEGABYTES_A_SECOND = 10;

/** Tells how far it is: on a terminal in one line, elsewhere in a line every ten seconds. */
function showProgress(folder, packages) {
  const started = Date.now();
  const onTerminal = process.stdout.isTTY;
  // The folders are made first, all at once; a package is there when its own description is.
  const installed = () => packages.filter(path => existsSync(join(folder, path, 'package.json'))).length;
  const tell = () => {
    const seconds = Math.round((Date.now() - started) / 1000);
    const line = `  ${installed().toLocaleString('en')} of ${packages.length.toLocaleString('en')} packages, ${seconds} s`;
    process.stdout.write(onTerminal ? `\r${line}` : `${line}\n`);
  };
  const timer = setInterval(tell, onTerminal ? 1000 : 10_000);
  return () => {
    clearInterval(timer);
    if (onTerminal) process.stdout.write('\n');
  };
}

/** Runs `npm ci` in a folder; resolves with its exit code. */
function npmCi(folder) {
  // Development packages too, whatever NODE_ENV says: without them nothing can be built.
  const npmArguments = ['ci', '--include=dev', '--no-audit', '--no-fund', '--no-progress', '--loglevel=error'];
  const npmScript = process.env.npm_execpath;
  const options = { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] };
  // The npm that runs this script; run by hand under Windows, npm is a .cmd file, which needs a shell.
  const child = npmScript?.endsWith('.js')
    ? spawn(process.execPath, [npmScript, ...npmArguments], options)
    : spawn('npm', npmArguments, { ...options, shell: process.platform === 'win32' });
  return new Promise((done, fail) => child.on('error', fail).on('exit', code => done(code ?? 1)));
}

const packagesIn = lockFile => JSON.parse(readFileSync(lockFile, 'utf8')).packages;

/** Whether npm has installed exactly the packages that are wanted: it notes what it put there, at the end; packages for other systems may be left out. */
function areInstalled(wanted, modules) {
  const note = join(modules, '.package-lock.json');
  if (!existsSync(note)) return false;
  const installed = packagesIn(note);
  return (
    Object.keys(installed).every(path => path in wanted) &&
    Object.entries(wanted).every(([path, { integrity, optional }]) =>
      path in installed ? installed[path].integrity === integrity : path === '' || optional,
    )
  );
}

/**
 * Installs the packages of a folder's package-lock.json unless exactly these are there already; ends this process where that fails.
 * @param {string} folder with package.json and package-lock.json
 * @param {string} what they are for, to begin a sentence with
 * @param {number} megabytes that they take on disk
 */
export async function installPackages(folder, what, megabytes) {
  const modules = join(folder, 'node_modules');
  const wanted = packagesIn(join(folder, 'package-lock.json'));
  // A second working tree may link to the first one's packages; installing through the link would empty them for both.
  const linked = lstatSync(modules, { throwIfNoEntry: false })?.isSymbolicLink();
  if (linked || areInstalled(wanted, modules)) return;
  const packages = Object.keys(wanted).filter(path => path !== '');
  const minutes = Math.max(1, Math.round(megabytes / MEGABYTES_A_SECOND / 60));
  console.log(
    `${what}: ${packages.length.toLocaleString('en')} packages (${megabytes.toLocaleString('en')} MB on disk) are installed, once. That takes about ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}, more on a slow line.`,
  );
  const end = showProgress(folder, packages);
  const code = await npmCi(folder).finally(end);
  if (code !== 0) {
    console.error('The packages could not be installed: see above. Without a connection to the npm registry this cannot work.');
    process.exit(code);
  }
}
