import { largeCatalogue } from '../tests/cases/largeCatalogue';
import { loadedFunctions, timed } from './loadedFunctions';

/* Reading catalogues of 10,000, 50,000 and 200,000 crimp rows, and 10,000 look-ups in one call with each; functions of dist/functions.js. */

const found = loadedFunctions();
const call = (id: string, ...args: unknown[]) => found.get(id)!(...args, {}) as unknown[][];
const LOOKUPS = 10_000;
const column = (cell: (row: number) => unknown) => Array.from({ length: LOOKUPS }, (_, row) => [cell(row)]);

console.log('| crimp rows | CATALOGUE, first | usual | × rows | HOSEDATA, 10,000 | CRIMPSETUP | ASSEMBLY | UNITCOST |');
console.log('| --- | --- | --- | --- | --- | --- | --- | --- |');
let before = 0;
for (const [hoseCount, fittingCount] of [
  [100, 100],
  [200, 250],
  [400, 500],
] as const) {
  const { hoses, fittings, crimps, rates } = largeCatalogue(hoseCount, fittingCount);
  const tables = [hoses, fittings, crimps, null, rates, null, null, null, null];
  const [first, usual] = timed(() => call('CATALOGUE', ...tables), 3);
  const handle = call('CATALOGUE', ...tables);
  const hose = column(row => `Alder hose ${row % hoseCount}`);
  const end = column(row => `alder cone ${(row * 7) % fittingCount}`);
  const length = column(row => 600.5 + (row % 1000));
  const times = [
    () => call('HOSEDATA', handle, hose, [['bore']]),
    () => call('CRIMPSETUP', handle, hose, end, null),
    () => call('ASSEMBLY', handle, hose, end, end, length, null, null),
    () => call('UNITCOST', handle, hose, end, end, length, [[10]], null),
  ].map(look => `${(1000 * timed(look)[1]).toFixed(0)} ms`);
  const rows = hoseCount * fittingCount;
  const growth = before === 0 ? '' : (usual / before).toFixed(1);
  console.log(`| ${rows} | ${first.toFixed(2)} s | ${usual.toFixed(2)} s | ${growth} | ${times.join(' | ')} |`);
  before = usual;
}
