import { createCustomFunctions, type AssociatedFunction } from './customFunctions';

/** What this script leaves on the page: `CustomFunctions` for functions.js, and the functions it associates. */
export interface PageGlobals {
  CustomFunctions: unknown;
  benchrowAssociated: ReadonlyMap<string, AssociatedFunction>;
}

// A classic script that stands before functions.js on the try-out page, where Excel would have its own runtime.
const { global, functions } = createCustomFunctions();
Object.assign(globalThis, { CustomFunctions: global, benchrowAssociated: functions } satisfies PageGlobals);
