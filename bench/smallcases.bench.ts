import { spawnSync } from 'node:child_process';

/** 30,000 small random cutting problems against brute force: the test of the same name with ten times the cases. */
const { status } = spawnSync(process.execPath, ['node_modules/jest/bin/jest.js', 'tests/core/cutplan/smallCases'], {
  stdio: 'inherit',
  env: { ...process.env, SMALL_CASES: '30000' },
});
if (status !== 0) process.exitCode = 1;
