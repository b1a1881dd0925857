import boundaries from 'eslint-plugin-boundaries';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const folder = name => ({ type: name, pattern: `src/${name}` });
const EVENT = { name: 'event', message: 'pass the event in' };
const throughPort = (...names) => names.map(name => ({ name, message: 'only src/host knows the host' }));
const arrow = (from, ...to) => ({ from: [from], allow: [from, ...to] });

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'artifacts/'] },
  ...tseslint.configs.recommended,
  {
    files: ['src/**/*.{ts,tsx}'],
    plugins: { boundaries, 'react-hooks': reactHooks },
    settings: {
      'boundaries/elements': ['core', 'workbook', 'cells', 'sheets', 'host', 'functions', 'taskpane', 'preview'].map(folder),
      'import/resolver': { typescript: { alwaysTryTypes: true } },
    },
    rules: {
      ...reactHooks.configs.recommended.rules,
      'boundaries/element-types': [
        'error',
        {
          default: 'disallow',
          message: '${file.type} must not import ${dependency.type}: arrows point one way (DEVELOPERS.md)',
          rules: [
            arrow('core'),
            arrow('workbook'),
            arrow('cells', 'core'),
            arrow('sheets', 'core', 'cells', 'workbook'),
            arrow('host', 'core', 'cells', 'workbook'),
            arrow('functions', 'core', 'cells', 'host', 'workbook'),
            arrow('taskpane', 'sheets', 'core', 'cells', 'workbook', 'host'),
            arrow('preview', 'core', 'cells', 'workbook', 'sheets', 'functions', 'host', 'taskpane'),
          ],
        },
      ],
      'no-restricted-globals': ['error', EVENT],
      eqeqeq: ['error', 'always'],
      'max-lines': ['error', { max: 250, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    files: ['src/core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', 'Excel', 'Office', 'CustomFunctions', 'document', 'window', 'self', 'fetch'],
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            { group: ['react*', '@fluentui/*', '@univerjs/*', 'exceljs'], message: 'core knows numeric libraries only' },
          ],
        },
      ],
    },
  },
  {
    files: ['src/taskpane/**/*.{ts,tsx}'],
    // The page that Excel opens waits for Office.js, and starts the pane.
    ignores: ['src/taskpane/index.tsx'],
    rules: { 'no-restricted-globals': ['error', EVENT, ...throughPort('Excel', 'Office', 'OfficeRuntime')] },
  },
  {
    files: ['src/functions/**/*.ts'],
    rules: { 'no-restricted-globals': ['error', EVENT, ...throughPort('Excel', 'Office', 'document', 'window')] },
  },
  {
    // Worksheet functions and cells are any[][] by contract: typed parameters would turn blanks into 0.
    files: ['src/functions/**/*.ts', 'src/cells/**/*.ts', 'tests/**/*.{ts,tsx}'],
    rules: { '@typescript-eslint/no-explicit-any': 'off' },
  },
);
