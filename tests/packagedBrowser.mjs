import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { madeOnce } from './madeOnce.mjs';

/* A browser of the Chromium family comes with the packages: the same one everywhere, without windows, which costs a quarter less time than one from
   the system. It is unpacked once for each version; only Linux on x64 can run it. */

const root = fileURLToPath(new URL('..', import.meta.url));
const PACKAGE = '@sparticuz/chromium';

const { version } = JSON.parse(readFileSync(join(root, 'node_modules', PACKAGE, 'package.json'), 'utf8'));
const folder = join(root, 'node_modules/.cache/benchrow-tests', `chromium-${version}`);

/** Where the browser stands once it is unpacked. */
export const PACKAGED_BROWSER = join(folder, 'chromium');

const starts = browser => spawnSync(browser, ['--version']).status === 0;

/** Unpacks the browser where it is not yet; leaves nothing where this system cannot start it, for which the tests look for an installed one. */
export async function unpackBrowser() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return;
  await madeOnce(folder, async into => {
    const before = process.env.TMPDIR;
    // The package unpacks into the folder of temporary files, and takes what stands there already, of whatever version.
    process.env.TMPDIR = into;
    try {
      const { default: packaged } = await import(PACKAGE);
      packaged.setGraphicsMode = false;
      const isFit = starts(await packaged.executablePath());
      if (!isFit)
        console.warn('The packaged browser does not start here (it needs libnss3): the tests look for an installed one.');
      return isFit;
    } finally {
      if (before === undefined) delete process.env.TMPDIR;
      else process.env.TMPDIR = before;
    }
  });
}
