// Types, lint with import boundaries, format.
import { CHECKS } from './checks.mjs';
import { stepsAtOnce } from './step.mjs';

await stepsAtOnce(CHECKS);
