import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { called } from '../host/customFunctions';
import { readCatalogue } from '../../src/core/catalogue/readCatalogue';
import { frictionFactor } from '../../src/core/hydraulics/frictionFactor';
import { unitCost } from '../../src/core/catalogue/unitCost';
import { Decimal } from '../../src/core/units/decimal';
import { worksheetFunctions } from '../../src/functions/register';
import { treeTables } from '../core/catalogue/treeCatalogue';
import { argumentsOf } from './formulaText';

const [headings, ...cases] = readFileSync(join(__dirname, '../cases/handbooks/workedExamples.tsv'), 'utf8')
  .trimEnd()
  .split('\n')
  .map(line => line.split('\t'));

test('the table of worked examples is whole: a source and its standing for each', () => {
  expect(headings).toEqual(['formula', 'answer', 'tolerance', 'source', 'status']);
  expect(cases.length).toBeGreaterThan(20);
  for (const cells of cases) {
    expect(cells).toHaveLength(5);
    expect(cells[4]).toMatch(/^(published|memory)/);
  }
});

test.each(cases)('=%s gives %s (± %s): %s', (formula, answer, tolerance) => {
  const [, id, args] = /^HOSE\.([A-Z0-9]+)\((.*)\)$/.exec(formula!)!;
  const worksheetFunction = (worksheetFunctions as Record<string, (...cells: any[]) => any>)[id!]!;
  const value = called(() => worksheetFunction(...argumentsOf(args!)))[0]![0];
  expect(typeof value).toBe('number');
  expect(Math.abs((value as number) - Number(answer))).toBeLessThanOrEqual(Number(tolerance) + 1e-12);
});

// Esposito, Fluid Power with Applications, 6th ed., example 4-5: Re = 7740·v·D/ν; read from the Moody chart to about 5 %. Published
// (solution in the Textbook Companion, FOSSEE/Scilab-TBC-Uploads 788).
test.each([
  [(7740 * 10 * 1) / 50, 0, 0.042],
  [(7740 * 40 * 1) / 50, 0.0018, 0.036],
])('Esposito, example 4-5: at Re %d and relative roughness %d the chart gives %d', (reynolds, roughness, chart) =>
  expect(Math.abs(frictionFactor(reynolds, roughness) / chart - 1)).toBeLessThan(0.05),
);

test('Kotler, Marketing Management, mark-up pricing (memory): 10 a piece and 300,000 fixed over 50,000 pieces cost 16 each', () => {
  const column = (heading: string) => treeTables.fittings[0]!.indexOf(heading);
  const fittings = treeTables.fittings.map((cells, row) =>
    cells.map((cell, at) => (row > 0 && at === column('Price') ? 5 : cell)),
  );
  const hoses = treeTables.hoses.map((cells, row) =>
    cells.map((cell, at) => (row > 0 && treeTables.hoses[0]![at] === 'Price per length (per m)' ? 0 : cell)),
  );
  const rates = [
    ['Rate', 'Value', 'Note'],
    ['labour per hour', 60, null],
    ['set-up minutes', 300_000, null],
    ['minutes per cut', 0, null],
    ['minutes per crimp', 0, null],
  ];
  const catalogue = readCatalogue({ ...treeTables, hoses, fittings, rates });
  const ends = ['Alder cone straight DN 12', 'Alder cone elbow DN 12'] as const;
  const cost = unitCost(catalogue, 'Alder DN 12', ends, new Decimal(1000), new Decimal(50_000));
  expect([cost.fittings, cost.labour, cost.total].map(Number)).toEqual([10, 6, 16]);
});
