import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BuiltFunctions } from '../../src/preview/headless/recalculate';

const dist = join(__dirname, '../../dist');

/** The worksheet functions as `npm run build` made them. */
export function builtFunctions(): BuiltFunctions {
  return {
    script: readFileSync(join(dist, 'functions.js'), 'utf8'),
    metadata: JSON.parse(readFileSync(join(dist, 'functions.json'), 'utf8')),
    sibling: name => (existsSync(join(dist, name)) ? readFileSync(join(dist, name)) : undefined),
  };
}
