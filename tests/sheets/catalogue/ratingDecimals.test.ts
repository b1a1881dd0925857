import type { RawCell, RawTable } from '../../../src/core/catalogue/rawTable';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { ratingDecimals } from '../../../src/sheets/catalogue/ratingDecimals';
import { treeTables } from '../../core/catalogue/treeCatalogue';

/** A table with other headings and cells of a column. */
function withColumn(table: RawTable, heading: string, as: string, cell: (before: RawCell) => RawCell): RawTable {
  const at = table[0]!.indexOf(heading);
  return table.map((row, index) => row.map((own, column) => (column !== at ? own : index === 0 ? as : cell(own))));
}

const PRESSURE = 'Working pressure (bar)';
const inPsi = withColumn(treeTables.fittings, PRESSURE, 'Working pressure (psi)', cell => cell && 3010);
const halves = withColumn(treeTables.hoses, PRESSURE, PRESSURE, cell => Number(cell) + 0.5);
const thirds = withColumn(treeTables.derating!, 'Factor', 'Factor', () => 0.333);

test.each([
  ['all ratings are stated', {}, undefined],
  ['hoses are rated in half bars', { hoses: halves }, undefined],
  ['couplings are rated in psi', { fittings: inPsi }, 0],
  ['couplings are rated in psi, hoses in half bars', { fittings: inPsi, hoses: halves }, 1],
  ['a derating factor makes more decimals', { derating: thirds }, 0],
] as const)('where %s, ratings are read with that many decimals', (_, tables, decimals) => {
  expect(ratingDecimals(readCatalogue({ ...treeTables, ...tables }))).toBe(decimals);
});
