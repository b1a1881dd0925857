import { HyperFormula } from 'hyperformula';
import { loadedFunctions, timed } from './loadedFunctions';
import { seededUniform } from './seededUniform';

/*
 * The same work by formulas that somebody would write without Benchrow, calculated by another engine (HyperFormula, GPL-3.0, for tests and
 * benchmarks only), beside one call of a function of dist/functions.js over all rows. The engine's time is that of a sheet with the
 * formulas less that of the same sheet without them. Its formulas judge in plain floating point and check no input.
 */

const found = loadedFunctions();
const call = (id: string, ...args: unknown[]) => found.get(id)!(...args, {});
const uniform = seededUniform(20261129);
const hundredths = (value: number) => Math.round(value * 100) / 100;
const OPTIONS = { licenseKey: 'gpl-v3', maxRows: 200_000 };

function crimps(rows: number): number[][] {
  return Array.from({ length: rows }, () => {
    const mean = 27.5 + (uniform() - 0.5) * 0.3;
    return Array.from({ length: 4 }, () => hundredths(mean + (uniform() - 0.5) * 0.1));
  });
}

const lengths = (rows: number) =>
  Array.from({ length: rows }, () =>
    [500 + 2000 * uniform(), 20 + 40 * uniform(), 20 + 40 * uniform(), 5 * uniform()].map(hundredths),
  );

/** Processor time of the engine for the formulas alone, in seconds. */
function engineTime(data: readonly number[][], formula: (row: number) => string): number {
  const build = (sheet: (number | string)[][]) => {
    const [, usual] = timed(() => HyperFormula.buildFromArray(sheet, OPTIONS).destroy(), 3);
    return usual;
  };
  return build(data.map((row, index) => [...row, formula(index + 1)])) - build(data.map(row => [...row]));
}

const column = (block: readonly number[][], index: number) => block.map(row => [row[index]]);

const WORK = [
  {
    name: 'CRIMPCHECK',
    data: crimps,
    ours: (data: number[][]) => () => call('CRIMPCHECK', data, [[27.5]], [[0.1]], null, null),
    formula: (row: number) =>
      `=IF(ABS(AVERAGE(A${row}:D${row})-27.5)<=0.1,"IN SPEC",IF(AVERAGE(A${row}:D${row})<27.5,"TIGHT","LOOSE"))`,
  },
  {
    name: 'CUTLENGTH',
    data: lengths,
    ours: (data: number[][]) => {
      const [overall, a, b, allowance] = [0, 1, 2, 3].map(index => column(data, index));
      return () => call('CUTLENGTH', overall, a, b, allowance);
    },
    formula: (row: number) => `=A${row}-B${row}-C${row}+D${row}`,
  },
];

console.log('| function | rows | first call | usual call | formulas in the other engine | usual call ÷ engine | × rows ÷ 10 |');
console.log('| --- | --- | --- | --- | --- | --- | --- |');
for (const { name, data, ours, formula } of WORK) {
  let before = 0;
  for (const rows of [1000, 10_000, 100_000]) {
    const cells = data(rows);
    const [first, usual] = timed(ours(cells));
    const engine = engineTime(cells, formula);
    const growth = before === 0 ? '' : (usual / before).toFixed(1);
    console.log(
      `| ${name} | ${rows} | ${first.toFixed(3)} s | ${usual.toFixed(4)} s | ${engine.toFixed(3)} s | ${(usual / engine).toFixed(2)} | ${growth} |`,
    );
    before = usual;
  }
}
