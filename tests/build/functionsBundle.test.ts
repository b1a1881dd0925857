import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { builtFile } from '../builtFile';
import '../host/customFunctions';
import { worksheetFunctions } from '../../src/functions/register';
import { CellError, loadedFunctions, metadata, script } from './excelCall';

test('functions.js is under 64,000 bytes as a server sends it; where it is not, DEVELOPERS.md, Build, says what to do', () => {
  expect(gzipSync(script).length).toBeLessThan(64_000);
});

test('functions.js registers as a classic script, without a page, exactly the functions of the sources and of functions.json', () => {
  const ids = Object.keys(worksheetFunctions).sort();
  expect([...loadedFunctions().keys()].sort()).toEqual(ids);
  expect(metadata.functions.map(({ id }: { id: string }) => id).sort()).toEqual(ids);
});

test('functions.js can be required in Node, too, where CustomFunctions stands ready; a plan of cuts needs no other file there', () => {
  const code = `
    const found = new Map();
    globalThis.CustomFunctions = { Error, ErrorCode: {}, associate: (id, call) => found.set(id, call) };
    require(${JSON.stringify(builtFile('functions.js'))});
    const plan = found.get('CUTPLAN')([[1250], [840]], [[3], [2]], [[6000]], [['']], [[3]], null, null, null, null, null, {});
    plan.then(rows => console.log(JSON.stringify([found.size, rows[1]])));`;
  const answer = execFileSync(process.execPath, ['-e', code], { encoding: 'utf8', timeout: 60_000 });
  expect(JSON.parse(answer)).toEqual([Object.keys(worksheetFunctions).length, [6000, 1, '3 x 1250 + 2 x 840', 5445, 555]]);
});

test('a long search in place lets others work in between, by a message as in a page, and proves what the literature does', () => {
  const [count, stock, ...rest] = readFileSync('tests/cases/cutting/falkenauer/Falkenauer_t120_10.csp', 'utf8')
    .match(/\d+/g)!
    .map(Number);
  const column = (first: number) => Array.from({ length: count! }, (_, k) => [rest[2 * k + first]!]);
  const code = `
    const found = new Map();
    globalThis.CustomFunctions = { Error, ErrorCode: {}, associate: (id, call) => found.set(id, call) };
    require(${JSON.stringify(builtFile('functions.js'))});
    let others = 0;
    const other = setInterval(() => others++, 1);
    const [lengths, quantities] = ${JSON.stringify([column(0), column(1)])};
    found.get('CUTPLAN')(lengths, quantities, [[${stock}]], null, [[0]], null, null, [[30]], null, null, {}).then(rows => {
      clearInterval(other);
      console.log(JSON.stringify([rows.at(-1).slice(0, 3), others > 0]));
    });`;
  const answer = execFileSync(process.execPath, ['-e', code], { encoding: 'utf8', timeout: 60_000 });
  // 40 pieces of stock: Falkenauer 1996 (OR-Library binpack6), see tests/cases/cutting/INDEX.tsv.
  expect(JSON.parse(answer)).toEqual([['Total', 40, 'proven best'], true]);
});

/** Words of which one tells what an argument is: its unit, its shape, its choices, or whose name it takes. */
const SAYS_WHAT =
  /\b(units?|mm|in|bar|psi|digits|turns|degrees|fractions?|seconds|value|column|table|block|names?|handle|numbers?|heading)\b|"/i;

test('ids are A–Z and 0–9, names are the ids, and every function and argument is explained', () => {
  for (const { id, name, description, helpUrl, parameters } of metadata.functions) {
    expect([id, name]).toEqual([expect.stringMatching(/^[A-Z0-9]+$/), id]);
    expect(description.length).toBeGreaterThan(20);
    expect(helpUrl).toBe(`https://localhost:3000/help/${id}.html`);
    for (const parameter of parameters) {
      expect({ id, ...parameter }).toMatchObject({
        type: 'any',
        dimensionality: 'matrix',
        description: expect.stringMatching(/^["A-Z].{12,}\.$/),
      });
      expect(parameter.description).toMatch(SAYS_WHAT);
    }
  }
});

test('the switches of functions.json are these: errors come in as values, in every function, and nothing streams or is volatile', () => {
  const { functions, ...switches } = metadata as typeof metadata & Record<string, unknown>;
  // Excel 2021 LTSC crashes on these two together (OfficeDev/office-js issue 4385): the manifest keeps it out.
  expect(switches).toEqual({ allowErrorForDataTypeAny: true, allowCustomDataForDataTypeAny: true });
  const options = functions.flatMap(({ id, options }) => (options ? [[id, options]] : []));
  expect(options).toEqual([['CUTPLAN', { cancelable: true }]]);
});

test('functions.js says its version, that of the manifest, for the pane to compare', () => {
  const page: { benchrowVersion?: string } = {};
  runInContext(script, createContext(Object.assign(page, { CustomFunctions: { associate: () => {}, ErrorCode: {}, Error } })));
  const [, version] = /<Version>(\d+\.\d+\.\d+)\.0<\/Version>/.exec(readFileSync(builtFile('manifest.xml'), 'utf8'))!;
  expect(page.benchrowVersion).toBe(version);
});

test('a call gives plain values and the host’s own errors', () => {
  const cutLength = loadedFunctions().get('CUTLENGTH')!;
  const result = cutLength([[1200], ['x']], [[48.5]], [[52]], null);
  expect(result[0]).toEqual([1099.5]);
  expect(result[1][0]).toBeInstanceOf(CellError);
  expect(result[1][0]).toMatchObject({ code: '#VALUE!' });
});
