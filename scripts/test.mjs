// Types, lint, format; then the build; then all tests against the sources and the build.
import { step } from './step.mjs';

// The tests read the addresses of an ordinary build, whatever this shell is set to.
delete process.env.BASE_URL;
delete process.env.OFFICE_JS;

await import('./check.mjs');
await import('./build.mjs');
step('jest/bin/jest.js', process.argv.slice(2));
