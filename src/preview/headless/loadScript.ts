import { createContext, runInContext } from 'node:vm';
import { createCustomFunctions, type AssociatedFunction } from '../host/customFunctions';
import { quickGlobals } from './quickGlobals';

/** Gives the text of a file that stands beside functions.js, by its name; undefined where there is none. */
export type SiblingFile = (name: string) => string | Uint8Array | undefined;

interface ScriptElement {
  src: string;
  onload?: (event: unknown) => void;
  onerror?: (event: unknown) => void;
  setAttribute(): void;
}

/** As much of a page as a script needs to load further scripts from beside itself. */
function pageFor(run: (script: string) => void, sibling: SiblingFile): object {
  const append = (element: ScriptElement) => {
    setImmediate(() => {
      const script = sibling(element.src.replace(/^.*\//, ''));
      if (script === undefined) return element.onerror?.({ type: 'error', target: element });
      run(typeof script === 'string' ? script : new TextDecoder().decode(script));
      element.onload?.({ type: 'load', target: element });
    });
  };
  return {
    head: { appendChild: append },
    createElement: (): ScriptElement => ({ src: '', setAttribute() {} }),
    getElementsByTagName: () => [],
    currentScript: { src: 'https://localhost/functions.js', tagName: 'SCRIPT' },
  };
}

/** Answers requests for files beside functions.js (the solver's WebAssembly), and no others. */
function fetchFrom(sibling: SiblingFile) {
  return async (url: string | URL) => {
    const found = sibling(String(url).replace(/^.*\//, ''));
    return found === undefined ? new Response(null, { status: 404 }) : new Response(found as BodyInit);
  };
}

/**
 * Runs functions.js in Node as Excel does: a classic script that finds a global `CustomFunctions`; no document of a page.
 * @param script text of functions.js
 * @param sibling how it loads heavier parts from beside itself; by default there are none
 * @returns the functions it associates, by id
 */
export function loadScript(script: string, sibling: SiblingFile = () => undefined): Map<string, AssociatedFunction> {
  const { global, functions } = createCustomFunctions();
  const globals = {
    console,
    setTimeout,
    clearTimeout,
    setImmediate,
    queueMicrotask,
    performance,
    URL,
    TextDecoder,
    TextEncoder,
    WebAssembly,
    Response,
    AbortController,
  };
  const context = createContext({
    ...globals,
    CustomFunctions: global,
    fetch: fetchFrom(sibling),
    location: new URL('https://localhost/functions.js'),
  });
  const run = (text: string) => void runInContext(text, context, { filename: 'functions.js' });
  run('var self = globalThis;');
  run(quickGlobals);
  Object.assign(context, { document: pageFor(run, sibling) });
  run(script);
  return functions;
}
