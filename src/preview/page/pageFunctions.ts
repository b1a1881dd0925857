import type { PageGlobals } from '../host/pageGlobal';
import type { FunctionsFile } from '../../workbook/functionMetadata';
import type { AssociatedFunction } from '../host/customFunctions';

/** The worksheet functions of this page. */
export interface PageFunctions {
  /** Content of functions.json. */
  readonly file: FunctionsFile;
  /** What functions.js associated, by id. */
  readonly associated: ReadonlyMap<string, AssociatedFunction>;
}

/**
 * The worksheet functions that functions.js left on the page, with their metadata.
 * @throws Error with a sentence where one of the two files did not load
 */
export async function pageFunctions(): Promise<PageFunctions> {
  const associated = (globalThis as unknown as Partial<PageGlobals>).benchrowAssociated;
  if (!associated || associated.size === 0)
    throw new Error('functions.js did not load: build the project again and reload this page.');
  const answer = await fetch('functions.json');
  if (!answer.ok) throw new Error('functions.json did not load: build the project again and reload this page.');
  return { file: (await answer.json()) as FunctionsFile, associated };
}
