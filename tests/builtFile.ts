import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** Tests and benchmarks are started in the project's folder. */
const dist = join(process.cwd(), 'dist');

/**
 * Path of a file that the build makes.
 * @param name below dist/
 * @throws Error where nothing has been built yet
 */
export function builtFile(name: string): string {
  const path = join(dist, name);
  if (!existsSync(path)) throw new Error(`There is no dist/${name}: run "npm run build" first.`);
  return path;
}
