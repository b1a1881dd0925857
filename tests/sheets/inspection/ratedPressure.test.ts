import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import type { CrimpRow } from '../../../src/sheets/crimps/crimpRow';
import { ratedPressure } from '../../../src/sheets/inspection/ratedPressure';
import { treeTables } from '../../core/catalogue/treeCatalogue';

test.each([
  ['Working pressure (bar)', 250, 250],
  // 3010 psi are 207.53 bar.
  ['Working pressure (psi)', 3010, 207],
] as const)('couplings with %s %d give a record of %d bar', (heading, rating, read) => {
  const [head, ...rows] = treeTables.fittings;
  const at = head!.indexOf('Working pressure (bar)');
  const fittings = [
    head!.map((cell, column) => (column === at ? heading : cell)),
    ...rows.map(row => row.map((cell, column) => (column === at && cell !== null ? rating : cell))),
  ];
  const ends = ['A', 'B'].map(end => ({ end, hose: 'Alder DN 12', fitting: 'Alder cone straight DN 12' }) as CrimpRow);
  const { value, unit } = ratedPressure(readCatalogue({ ...treeTables, fittings }), ends)!;
  expect([value.toNumber(), unit]).toEqual([read, 'bar']);
});
