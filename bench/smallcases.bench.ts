import { spawnSync } from 'node:child_process';

/** All 3,000 small random cutting problems against brute force: the test of the same name with its full number. */
const { status } = spawnSync(process.execPath, ['node_modules/jest/bin/jest.js', 'tests/core/cutplan/smallCases'], {
  stdio: 'inherit',
  env: { ...process.env, SMALL_CASES: '3000' },
});
if (status !== 0) process.exitCode = 1;
