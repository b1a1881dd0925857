// Types, lint with import boundaries, format.
import { step } from './step.mjs';

step('typescript/bin/tsc', ['-p', '.', '--noEmit']);
step('eslint/bin/eslint.js', ['.', '--max-warnings', '0']);
step('prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']);
