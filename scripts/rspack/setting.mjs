import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A setting that the person who builds must correct. */
class SettingError extends Error {
  name = 'SettingError';
}

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/**
 * What a build is made for, from the command line and the environment.
 * @param {{ mode?: string }} argv Rspack's own arguments
 * @returns {{ root: string, version: string, dist: string, mode: string, baseUrl: string, localOfficeJs: boolean }}
 */
export function buildSetting(argv = {}) {
  return {
    root,
    version: JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')).version,
    dist: resolve(root, 'dist'),
    mode: argv.mode ?? 'production',
    baseUrl: siteUrl(process.env.BASE_URL ?? 'https://localhost:3000'),
    localOfficeJs: officeJsIsLocal(process.env.OFFICE_JS ?? ''),
  };
}

/** BASE_URL without its last slash. Excel takes nothing but HTTPS, so anything else is refused here and not at the user's desk. */
function siteUrl(text) {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (url?.protocol !== 'https:' || url.search || url.hash) {
    throw new SettingError(
      `BASE_URL must be an https:// address without ? or #, such as https://office.example/benchrow; it is "${text}"`,
    );
  }
  return url.href.replace(/\/+$/, '');
}

function officeJsIsLocal(text) {
  if (!['', 'cdn', 'local'].includes(text)) throw new SettingError(`OFFICE_JS must be "local" or "cdn"; it is "${text}"`);
  return text === 'local';
}
