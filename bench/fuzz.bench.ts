import { spawnSync } from 'node:child_process';

/** A million random calls of the built functions against their contract: the test of the same name with ten times the calls, from another seed. */
const { status } = spawnSync(process.execPath, ['node_modules/jest/bin/jest.js', 'tests/build/fuzz'], {
  stdio: 'inherit',
  env: { FUZZ_CALLS: '1000000', FUZZ_SEED: String(Date.now() % 1e9), ...process.env },
});
if (status !== 0) process.exitCode = 1;
