import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';

/**
 * Makes a folder that is not there yet. It is made beside its place and moved there when it is complete: other runs see the whole folder or none.
 * @param {string} folder
 * @param {(into: string) => Promise<boolean>} make fills a folder; false where it cannot, and nothing is left
 */
export async function madeOnce(folder, make) {
  if (existsSync(folder)) return;
  const into = `${folder}-${process.pid}`;
  mkdirSync(into, { recursive: true });
  if (!(await make(into)) || existsSync(folder)) rmSync(into, { recursive: true });
  else renameSync(into, folder);
}
