import { availableParallelism } from 'node:os';
import { packedModules } from './tests/packedLibraries.mjs';

/** Unit, property and bundle tests run in Node; component tests name their environment in a docblock. */
export default {
  // Browser tests wait half of the time: a machine of two cores runs three files at once.
  maxWorkers: Math.max(3, availableParallelism() - 1),
  testEnvironment: 'node',
  // A busy machine may be ten times slower than a quiet one: what hangs is ended, what is slow is not.
  testTimeout: 120_000,
  // Code in a context of its own looks each global up there, at every use; as a parameter of its module it is at hand. Not among them: what tests replace, and what a library declares anew (parseInt).
  sandboxInjectedGlobals: [
    ...['Object', 'Array', 'Number', 'String', 'Boolean', 'Symbol', 'BigInt', 'Math', 'JSON', 'RegExp', 'Reflect', 'Promise'],
    ...['Map', 'Set', 'WeakMap', 'WeakSet', 'Error', 'TypeError', 'RangeError', 'Float64Array', 'Int32Array', 'Uint8Array'],
    ...['isNaN', 'isFinite', 'parseFloat', 'Infinity'],
  ],
  setupFilesAfterEnv: ['<rootDir>/tests/patientWaits.ts', '<rootDir>/tests/quickLabels.ts'],
  reporters: ['default', '<rootDir>/scripts/plainCount.mjs'],
  roots: ['<rootDir>/tests', '<rootDir>/src'],
  testMatch: ['**/*.test.ts', '**/*.test.tsx'],
  transform: {
    '^.+\\.(mjs|[tj]sx?)$': ['@swc/jest', { jsc: { target: 'es2022', transform: { react: { runtime: 'automatic' } } } }],
  },
  globalSetup: '<rootDir>/tests/prepare.mjs',
  moduleNameMapper: { ...packedModules, '\\.css$': '<rootDir>/tests/emptyStyle.cjs' },
};
