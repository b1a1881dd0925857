import boundaries from 'eslint-plugin-boundaries';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const EVENT = { name: 'event', message: 'pass the event in' };
const throughPort = (...names) => names.map(name => ({ name, message: 'only src/host knows the host' }));

/** Readers of people's sheets, and what every paper is written with: used by all papers. */
const READERS = ['table', 'catalogue', 'jobs', 'crimps', 'rack', 'pieces', 'gauges'];
/** Plans and papers: none imports another, except the purchase list, which counts reels by cut plans. */
const PAPERS = [
  ...['columns', 'cutlist', 'week', 'benchcard', 'tags', 'analysis', 'machines', 'inspection'],
  ...['quote', 'purchase', 'parts', 'duty', 'explain', 'recall', 'copy'],
];
const TABS = ['parts', 'quote', 'week', 'bench', 'qa', 'columns'];
const inSheets = names => names.map(name => `sheets/${name}`);
const SHEETS = inSheets([...READERS, 'print', ...PAPERS]);
const PANE = ['taskpane/app', 'taskpane/controls', ...TABS.map(name => `taskpane/${name}`)];
const FLOORS = ['core', 'workbook', 'cells', 'host', 'functions', 'preview'];
const ELEMENTS = [...SHEETS, ...PANE, ...FLOORS].map(name => ({ type: name, pattern: `src/${name}` }));

const arrow = (from, ...to) => ({ from: [from], allow: [from, ...to] });
const BELOW_SHEETS = ['core', 'cells', 'workbook'];
const ARROWS = [
  arrow('core'),
  arrow('workbook'),
  arrow('cells', 'core'),
  ...inSheets([...READERS, 'print']).map(name => arrow(name, ...BELOW_SHEETS, ...inSheets([...READERS, 'print']))),
  ...inSheets(PAPERS).map(name => arrow(name, ...BELOW_SHEETS, ...inSheets([...READERS, 'print']))),
  arrow('sheets/purchase', 'sheets/cutlist'),
  arrow('host', ...BELOW_SHEETS),
  arrow('functions', 'core', 'cells', 'host'),
  arrow('taskpane/controls', ...SHEETS, 'core', 'workbook'),
  ...TABS.map(name => arrow(`taskpane/${name}`, 'taskpane/controls', ...SHEETS, 'core', 'workbook')),
  arrow('taskpane/app', ...PANE, ...SHEETS, 'core', 'workbook', 'host'),
  arrow('preview', ...FLOORS, ...SHEETS, ...PANE),
];

export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', 'artifacts/'] },
  ...tseslint.configs.recommended,
  {
    files: ['src/**/*.{ts,tsx}'],
    plugins: { boundaries },
    settings: {
      'boundaries/elements': ELEMENTS,
      'import/resolver': { typescript: { alwaysTryTypes: true } },
    },
    rules: {
      // A folder that the lists above do not name would have no arrows at all.
      'boundaries/no-unknown-files': 'error',
      'boundaries/element-types': [
        'error',
        {
          default: 'disallow',
          message: '${file.type} must not import ${dependency.type}: arrows point one way (DEVELOPERS.md)',
          rules: ARROWS,
        },
      ],
      'no-restricted-globals': ['error', EVENT],
      eqeqeq: ['error', 'always'],
      'max-lines': ['error', { max: 250, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    // Where React is: its rules take half of the time that the others need for everything.
    files: ['src/taskpane/**/*.{ts,tsx}', 'src/preview/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks },
    rules: reactHooks.configs.recommended.rules,
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
    ignores: ['src/taskpane/app/index.tsx'],
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
