// Types, lint with import boundaries, format.
import { stepsAtOnce } from './step.mjs';

await stepsAtOnce([
  ['typescript/bin/tsc', ['-p', '.', '--noEmit']],
  ['eslint/bin/eslint.js', ['.', '--max-warnings', '0']],
  ['prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']],
]);
