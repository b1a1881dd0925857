/**
 * Programs that find faults without running anything: types, lint with import boundaries, format.
 * @type {readonly [script: string, args: string[]][]}
 */
export const CHECKS = [
  ['node_modules/typescript7/bin/tsc', ['-p', '.', '--noEmit']],
  ['node_modules/eslint/bin/eslint.js', ['.', '--max-warnings', '0']],
  ['node_modules/prettier/bin/prettier.cjs', ['--check', '--log-level', 'warn', '.']],
];
