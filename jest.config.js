/** Unit, property and bundle tests run in Node; component tests name their environment in a docblock. */
export default {
  testEnvironment: 'node',
  roots: ['<rootDir>/tests'],
  testMatch: ['**/*.test.ts', '**/*.test.tsx'],
  transform: {
    '^.+\\.(t|j)sx?$': ['@swc/jest', { jsc: { target: 'es2022', transform: { react: { runtime: 'automatic' } } } }],
  },
  transformIgnorePatterns: ['/node_modules/(?!(@stdlib-esm)/)'],
  moduleNameMapper: { '\\.css$': '<rootDir>/tests/emptyStyle.cjs' },
};
