// Types, lint, format; then the build; then all tests against the sources and the build.
import { step } from './step.mjs';

await import('./check.mjs');
step('webpack/bin/webpack.js', ['--mode', 'production']);
step('jest/bin/jest.js', process.argv.slice(2));
