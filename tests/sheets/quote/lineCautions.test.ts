import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { Decimal } from '../../../src/core/units/decimal';
import { lineCautions } from '../../../src/sheets/quote/lineCautions';
import type { QuoteLine } from '../../../src/sheets/jobs/quoteLine';
import { treeTables } from '../../core/catalogue/treeCatalogue';

const line = {
  row: 2,
  hose: 'Alder DN 12',
  fittingA: 'Alder cone straight DN 12',
  fittingB: 'Alder cone elbow DN 12',
  overall: new Decimal(1250),
  quantity: 4,
} as QuoteLine;

test('a rate that is missing is named beside the line, with what to do', () => {
  const rates = treeTables.rates.filter(([name]) => name !== 'set-up minutes');
  expect(rates).toHaveLength(treeTables.rates.length - 1);
  const [caution] = lineCautions(readCatalogue({ ...treeTables, rates }), [line]);
  expect(caution).toMatchObject({ row: 2 });
  expect(caution!.sentence).toMatch(/rate "set-up minutes" is missing: add it to the table Rates/);
});

test('a line whose cost is known has no caution for it', () => {
  const sentences = lineCautions(readCatalogue(treeTables), [line]).map(({ sentence }) => sentence);
  expect(sentences.join()).not.toMatch(/rate|price/);
});

test('a hose without couplings needs no price but its own', () => {
  const bare = { ...line, fittingA: '', fittingB: '' };
  expect(lineCautions(readCatalogue(treeTables), [bare])).toEqual([]);
  const [caution] = lineCautions(readCatalogue(treeTables), [{ ...bare, hose: 'Willow DN 25' }]);
  expect(caution!.sentence).toBe('price of Willow DN 25 is missing: enter it in the catalogue');
});

test('a guard that is in no table, or has no price, is named', () => {
  const guards = [
    ['Guard', 'Price per length (per m)'],
    ['coil', 4],
    ['tube', null],
  ];
  const sentence = (guard: string, more = {}) =>
    lineCautions(readCatalogue({ ...treeTables, guards }), [{ ...line, guard, ...more }])[0]?.sentence;
  expect(sentence('coil')).toBeUndefined();
  expect(sentence('net')).toMatch(/^guard "net" is not in the catalogue/);
  expect(sentence('tube')).toBe('price of tube is missing: enter it in the catalogue');
  expect(sentence('tube', { fittingA: '', fittingB: '' })).toBe('price of tube is missing: enter it in the catalogue');
});
