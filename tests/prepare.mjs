import { packLibraries } from './packedLibraries.mjs';
import { unpackBrowser } from './packagedBrowser.mjs';

/** Jest's `globalSetup`: what all test files share, made once for each state of the packages. */
export default async function prepare() {
  await Promise.all([packLibraries(), unpackBrowser()]);
}
