import { measureUnit } from '../../../src/core/units/measureUnit';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import type { RawCell } from '../../../src/core/catalogue/rawTable';
import { partFacts } from '../../../src/sheets/parts/partFacts';
import { partSearch, type PartQuery } from '../../../src/sheets/parts/partSearch';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { processorTime, ROOM } from '../../processorTime';

const catalogue = readCatalogue(treeTables);
const search = partSearch(catalogue);
const found = (words: string, more: Partial<PartQuery> = {}) =>
  search.find({ words, kind: '', size: '', endForm: '', ...more }).map(({ name }) => name);

test.each<[string, Partial<PartQuery>, string[]]>([
  ['birch', {}, ['Birch DN 25', 'Birch flange DN 25', 'Birch ferrule DN 25']],
  ['BIRCH 25 flange', {}, ['Birch flange DN 25']],
  ['cone elb', {}, ['Alder cone elbow DN 12', 'Alder oddment']],
  ['24° L straight', {}, ['Alder cone straight DN 12']],
  ['m36x2', {}, ['Alder cone straight DN 25']],
  ['flare dn', {}, ['Alder flare straight DN 12']],
  ['water glycol', {}, ['Alder DN 12', 'Alder DN 25']],
  ['', { kind: 'hose', size: 'DN 25' }, ['Alder DN 25', 'Birch DN 25', 'Willow DN 25']],
  ['', { endForm: 'split flange' }, ['Birch flange DN 25']],
  ['birch', { kind: 'fitting', endForm: 'ferrule' }, ['Birch ferrule DN 25']],
  ['alder oak', {}, []],
  ['lder', {}, []],
  ['dn12 elbow', {}, ['Alder cone elbow DN 12']],
  ['elbow 45°', {}, ['Alder oddment']],
  ['coupling 90', {}, ['Alder cone elbow DN 12']],
  ['12.9', {}, ['Alder oddment']],
  ['hose 12,7 mm', {}, ['Alder DN 12']],
  ['12.7', {}, ['Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 'Alder flare straight DN 12']],
  ['dn12', {}, ['Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 'Alder flare straight DN 12']],
  ['elbow', {}, ['Alder cone elbow DN 12', 'Alder oddment']],
  ['bore 12.7 flare', {}, ['Alder flare straight DN 12']],
  ['jic', {}, ['Alder flare straight DN 12']],
  ['dkos', {}, ['Alder cone straight DN 25']],
])('%j with %j finds %j: every word begins a word of the part or of what it is', (words, more, expected) =>
  expect(found(words, more)).toEqual(expected),
);

test('parts whose name has all words come before those that have them elsewhere', () => {
  expect(found('alder 12')[0]).toBe('Alder DN 12');
  expect(found('mineral')).toEqual(['Alder DN 12', 'Alder DN 25', 'Birch DN 25', 'Willow DN 25']);
});

test('sizes and end forms are offered in order', () => {
  expect(search.sizes).toEqual(['DN 12', 'DN 25']);
  expect(search.endForms).toEqual(['24° cone', '37° flare swivel', 'ferrule', 'split flange']);
});

test('a fraction is found where it is whole: G 1/2 is not G 1 1/2', () => {
  const threads = ['G 1/2', 'G 1 1/2', 'G1/4', '1 1/16-12 UN', '11/16-16 UN'];
  const fittings = threads.map(thread => ({ ...catalogue.fittings[0]!, fitting: `Oak ${thread}`, size: '', thread }));
  const oak = partSearch({ units: catalogue.units, hoses: [], fittings });
  const names = (words: string) => oak.find({ words, kind: '', size: '', endForm: '' }).map(({ name }) => name);
  expect(names('G 1/2')).toEqual(['Oak G 1/2']);
  expect(names('g1/2')).toEqual(['Oak G 1/2']);
  expect(names('G 1 1/2')).toEqual(['Oak G 1 1/2']);
  expect(names('g 1-1/2')).toEqual(['Oak G 1 1/2']);
  expect(names('1 1/16-12')).toEqual(['Oak 1 1/16-12 UN']);
  expect(names('11/16')).toEqual(['Oak 11/16-16 UN']);
});

test('accents need not be typed', () => {
  const [row] = catalogue.hoses;
  const french = partSearch({ units: catalogue.units, hoses: [{ ...row!, hose: 'Érable DN 12' }], fittings: [] });
  expect(french.find({ words: 'erable', kind: '', size: '', endForm: '' })).toHaveLength(1);
});

test('fifty thousand parts are searched while somebody types', () => {
  const fittings = Array.from({ length: 50_000 }, (_, i) => ({
    ...catalogue.fittings[i % 7]!,
    fitting: `Alder cone ${i} DN ${i % 60}`,
  }));
  const many = partSearch({ units: catalogue.units, hoses: [], fittings });
  const times = ['a', 'al cone', 'alder cone 4711', 'straight 24° dn 25', 'nothing like it'].map(words => {
    const rounds = [0, 1, 2].map(() => {
      const spent = processorTime();
      many.find({ words, kind: '', size: '', endForm: '' });
      return spent();
    });
    return Math.min(...rounds);
  });
  // What takes a tenth of a second is felt as at once.
  expect(Math.max(...times)).toBeLessThan(100 * ROOM);
});

test('a card shows units, reads fractions as per cent and names what is not stated', () => {
  const fitting = search.parts.find(({ name }) => name === 'Alder flare straight DN 12')!;
  const { facts, missing } = partFacts(fitting, catalogue.units);
  expect(Object.fromEntries(facts.map(({ heading, text }) => [heading, text]))).toEqual({
    Family: 'Alder',
    'End form': '37° flare swivel',
    Angle: 'straight',
    Size: 'DN 12',
    Bore: '12.7 mm',
    'Cut-off': '-3 mm',
    'Insertion depth': '26 mm',
    Mass: '0.15 kg',
    Price: '5.00',
  });
  expect(missing).toEqual(['Thread', 'Series', 'Measured to', 'Drop', 'Working pressure', 'Pack quantity']);
  const tables = { ...treeTables, hoses: treeTables.hoses.map((row, r) => [...row, r === 0 ? 'Shortens (%)' : 4] as RawCell[]) };
  const shrinking = readCatalogue(tables);
  const hose = partSearch(shrinking).parts[0]!;
  expect(partFacts(hose, shrinking.units).facts.find(({ field }) => field === 'shortens')!.text).toBe('4 %');
  expect(partFacts(hose, shrinking.units).facts.find(({ field }) => field === 'pricePerLength')!.text).toBe('8.00 per m');
});

test('a working pressure that was converted is read in whole bar, never above what it is', () => {
  const part = search.parts.find(({ name }) => name === 'Alder cone straight DN 12')!;
  const text = (workingPressure: number) =>
    partFacts({ ...part, row: { ...part.row, workingPressure } } as typeof part, catalogue.units).facts.find(
      ({ field }) => field === 'workingPressure',
    )!.text;
  // 3010 psi are 207.53 bar.
  expect([text(250), text(27.5), text(207.532194497388)]).toEqual(['250 bar', '27.5 bar', '207 bar']);
});

test('lengths of a catalogue in inches are shown in fractions, and prices with two decimals or as many as they have', () => {
  const units = { ...catalogue.units, length: measureUnit('length', 'in')! };
  const part = search.parts.find(({ name }) => name === 'Alder flare straight DN 12')!;
  const row = { ...part.row, bore: 0.5, cutOff: 1.1875, price: 0.125 };
  const { facts } = partFacts({ ...part, row } as typeof part, units);
  const text = (key: string) => facts.find(({ field }) => field === key)!.text;
  expect(['bore', 'cutOff', 'price'].map(text)).toEqual(['1/2 in', '1 3/16 in', '0.125']);
});
