import { spawnSync } from 'node:child_process';

/** The fast way of exact arithmetic against decimal.js, and crimps judged by both: the tests of the same names with two million cases each, from another seed. */
const { status } = spawnSync(process.execPath, ['node_modules/jest/bin/jest.js', 'scaledDecimal', 'bothWays'], {
  stdio: 'inherit',
  env: { EXACT_CASES: '2000000', EXACT_SEED: String(Date.now()), ...process.env },
});
if (status !== 0) process.exitCode = 1;
