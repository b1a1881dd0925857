// Types, lint with import boundaries, format.
import { step } from './step.mjs';

step('typescript/bin/tsc', ['-p', '.', '--noEmit']);
step('eslint/bin/eslint.js', [
  'src',
  'tests',
  'samples',
  'bench',
  'scripts',
  '--max-warnings',
  '0',
  '--no-error-on-unmatched-pattern',
]);
step('prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']);
