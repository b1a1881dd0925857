import { called, col } from '../host/customFunctions';
import { assembly } from '../../src/functions/assembly';
import { findHose } from '../../src/functions/parts';
import { treeTables, withCell } from '../core/catalogue/treeCatalogue';
import { treeFluids } from '../core/catalogue/treeFluids';
import { catalogueOf, one } from './treeHandle';

/* All limits are those of the invented tables; the rules are the contract's: the narrower of the fluid's range and the hose's own. */

// Elm DN 12 is named by no row of Fluids of its own, so that the blank one (−20 … 70 °C) counts.
const elm = ['Elm DN 12', 'Elm', null, 'DN 12', 12.7, 200, 150, -40, 100, null, 'water glycol', 0.5, 7, null];
const tables = { ...treeTables, hoses: [...treeTables.hoses, elm], fluids: treeFluids };

let handle: any[][];
beforeAll(() => (handle = catalogueOf(tables)));

describe('FINDHOSE with a fluid', () => {
  const names = (...args: unknown[]) => {
    const found = called(() => findHose(handle, ...(args.map(one) as [any, any, any, any, any])));
    return found.length === 1 ? String(found[0]![0]) : found.slice(1).map(row => row[0]);
  };

  test.each(['water-glycol', 'WATER GLYCOL', 'HFC', ' hfc ', 'wg 46'])('%s at 90 °C finds no hose, at 65 it does', fluid => {
    const none = names(10, 50, 400, -10, 90, fluid);
    expect(none).toMatch(/^#N\/A no hose of the catalogue suits: /);
    expect(none).toContain(`hottest with ${fluid.trim()} below 90 (5)`);
    expect(names(10, 50, 400, -10, 65, fluid)).toEqual(['Elm DN 12', 'Alder DN 12']);
  });

  test('an exact hose wins over a pattern, a pattern over a blank', () => {
    expect(names(10, 50, 400, -10, 70, 'HFC')).toEqual(['Elm DN 12']);
    expect(names(10, 50, 400, -10, 60, 'HFC')).toEqual(['Elm DN 12', 'Alder DN 12', 'Alder DN 25']);
  });

  test("the coldest of the fluid counts, too; a row without one leaves the hose's own", () => {
    expect(names(10, 50, 400, -30, 60, 'HFC')).toEqual(['Alder DN 12', 'Alder DN 25']);
  });

  test('another name of a listed fluid is that fluid; a fluid that no hose is for is named as it came', () => {
    expect(names(25, 50, 400, -10, 60, 'HLP 46')).toEqual(['Alder DN 25', 'Birch DN 25']);
    expect(String(called(() => findHose(catalogueOf(), one(25), one(50), one(400), one(-10), one(60), one('HLP 46')))[0])).toBe(
      '#N/A no hose of the catalogue suits: Alder DN 25 and 1 more would suit but for: not for HLP 46; ' +
        'of 4 hoses left out by: bore below 25 (1), working pressure below 50 (1), not for HLP 46 (4)',
    );
  });

  test('a row of Fluids that was left out makes its limits unknown, instead of none', () => {
    const bad = treeFluids.map((row, at) => (at === 1 ? row.map((cell, column) => (column === 4 ? 'warm' : cell)) : row));
    const found = catalogueOf({ ...tables, fluids: bad });
    expect(String(called(() => findHose(found, one(10), one(50), one(160), one(-10), one(50), one('HFC')))[0])).toContain(
      'temperature limits of HFC not known',
    );
  });
});

describe('ASSEMBLY with temperature and fluid', () => {
  const part = 'Alder cone straight DN 25';
  const made = (hose: string, temperature: unknown, fluid: unknown = null, fitting = part) =>
    called(() => assembly(handle, one(hose), one(fitting), one(fitting), one(900), one(temperature), one(fluid)))[0]!;

  test.each([
    // 165 bar × the factor of the next stated temperature at or above (60: 1, 80: 0.9, 100: 0.8); the couplings carry 250.
    ['at a stated temperature', 60, 165, 'OK'],
    ['between two stated ones, the hotter counts', 60.1, 148.5, 'OK'],
    ['at the next one', 80, 148.5, 'OK'],
    ['at the last one', 100, 132, 'OK'],
    ['no temperature', null, 165, 'OK'],
    [
      'above the last row and the hose',
      101,
      '',
      'hotter than Alder DN 25 allows: 101 °C, at most 100 °C; rating missing: Alder DN 25 at 101 °C (Derating ends at 100 °C)',
    ],
    ['colder than the hose', -41, '', 'colder than Alder DN 25 allows: -41 °C, at least -40 °C'],
  ])('%s', (_, temperature, pressure, verdict) => {
    const [cut, rating, mass, said] = made('Alder DN 25', temperature);
    expect([cut, rating, said]).toEqual([820, pressure, verdict]);
    expect(mass).toBeCloseTo(1.2 * 0.82 + 0.8, 12);
  });

  test('a hose without rows of Derating keeps its rating up to its Hottest', () => {
    const fitting = 'Alder cone straight DN 12';
    expect(made('Alder DN 12', 100, null, fitting).slice(1)).toEqual([250, expect.any(Number), 'OK']);
    expect(made('Alder DN 12', 101, null, fitting)[3]).toBe('hotter than Alder DN 12 allows: 101 °C, at most 100 °C');
    const blank = catalogueOf(withCell('hoses', 1, 'Hottest (°C)', null));
    const end = one('Alder cone straight DN 12');
    expect(assembly(blank, one('Alder DN 12'), end, end, one(900), one(60))[0]!.slice(1)).toEqual([
      '',
      expect.any(Number),
      'rating missing: Alder DN 12 at 60 °C (its Hottest is blank)',
    ]);
  });

  test('below the last row and above the hose, only the range is named', () => {
    const found = catalogueOf(withCell('hoses', 2, 'Hottest (°C)', 90));
    const end = one('Alder cone straight DN 25');
    expect(assembly(found, one('Alder DN 25'), end, end, one(900), one(95))[0]![3]).toBe(
      'hotter than Alder DN 25 allows: 95 °C, at most 90 °C',
    );
  });

  test("with a fluid, its limit counts; a fluid that is not the hose's is named with and without a temperature", () => {
    expect(made('Alder DN 25', 65, 'HFC').slice(1, 2)).toEqual(['']);
    expect(made('Alder DN 25', 65, 'HFC')[3]).toBe('hotter than Alder DN 25 allows with HFC: 65 °C, at most 60 °C');
    expect(made('Alder DN 25', 60, 'hfc')[3]).toBe('OK');
    expect(made('Alder DN 25', null, 'HFC')[3]).toBe('OK');
    expect(made('Alder DN 25', null, 'biodiesel')[3]).toBe(
      "fluid not the hose's: Alder DN 25 is for mineral oil, water glycol, not biodiesel",
    );
    expect(made('Alder DN 25', 60, 'biodiesel')[1]).toBe(165);
  });

  test('row by row, blanks in between, and a bad temperature in its own row', () => {
    const found = called(() =>
      assembly(handle, one('Alder DN 25'), one(part), one(part), one(900), col(80, null, 'warm'), col(null, 'HFC', null)),
    );
    expect(found.map(row => [row[1], row[3]])).toEqual([
      [148.5, 'OK'],
      [165, 'OK'],
      Array(2).fill('#VALUE! temperature is "warm": enter a temperature, like 70 or -10'),
    ]);
  });
});
