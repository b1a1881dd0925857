const NAMES = [
  ...['Object', 'Array', 'Number', 'String', 'Boolean', 'Symbol', 'BigInt', 'Math', 'JSON', 'RegExp', 'Promise'],
  ...['Map', 'Set', 'WeakMap', 'WeakSet', 'Error', 'TypeError', 'RangeError', 'isNaN', 'isFinite', 'parseInt', 'parseFloat'],
];

/** The first script of a new context: Node looks a global up in the context's object at every use, a name that a script declared it finds at once. */
export const quickGlobals = `const ${NAMES.map(name => `${name} = globalThis.${name}`).join(', ')};`;
