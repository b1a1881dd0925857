import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/**
 * Runs a program that a package brought (from node_modules), its output on the terminal; ends this process with its exit code where it fails.
 * @param {string} script path below node_modules, e.g. `jest/bin/jest.js`
 * @param {string[]} args
 * @param {Record<string, string>} [env] added to the environment
 */
export function step(script, args, env = {}) {
  const done = spawnSync(process.execPath, [join('node_modules', script), ...args], {
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  if (done.status !== 0) process.exit(done.status ?? 1);
}
