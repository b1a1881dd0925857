import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { BuiltFunctions } from '../../src/preview/headless/recalculate';
import { builtFile } from '../builtFile';

/** The worksheet functions as `npm run build` made them. */
export function builtFunctions(): BuiltFunctions {
  const script = builtFile('functions.js');
  const beside = (name: string) => join(dirname(script), name);
  return {
    script: readFileSync(script, 'utf8'),
    metadata: JSON.parse(readFileSync(builtFile('functions.json'), 'utf8')),
    sibling: name => (existsSync(beside(name)) ? readFileSync(beside(name)) : undefined),
  };
}
