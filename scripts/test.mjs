// Types, lint, format and the build; then all tests against the sources and the build.
import prepare from '../tests/prepare.mjs';
import { CHECKS } from './checks.mjs';
import { step, stepsAtOnce } from './step.mjs';

// The tests read the addresses of an ordinary build, whatever this shell is set to.
delete process.env.BASE_URL;
delete process.env.OFFICE_JS;

console.log('Checking types, lint and format, and building dist/ …');
// At once: none needs another, and none keeps all of the processors busy to its end.
await Promise.all([stepsAtOnce([...CHECKS, ['scripts/build.mjs', []]]), prepare()]);
step('node_modules/jest/bin/jest.js', process.argv.slice(2));
