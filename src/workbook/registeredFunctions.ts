/** A worksheet function as a host calls it: blocks of cells in (null where omitted), a block of cells or a promise of one out. */
export type RegisteredFunction = (...args: (readonly (readonly unknown[])[] | null)[]) => unknown;

/** Version of the worksheet functions that this page has registered, as functions.js leaves it on the page (`1.0.0`). */
export const registeredVersion = (): string | undefined => (globalThis as { benchrowVersion?: string }).benchrowVersion;

/**
 * The worksheet functions that this page has registered, by id without namespace (`CUTLENGTH`).
 * @returns the table that functions.js leaves on the page, or undefined where that script did not load
 */
export function registeredFunctions(): Readonly<Record<string, RegisteredFunction>> | undefined {
  return (globalThis as { benchrowFunctions?: Readonly<Record<string, RegisteredFunction>> }).benchrowFunctions;
}
