import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { identifyHose, type HoseFields } from '../../../src/sheets/parts/identifyHose';
import { identifyThread, type ThreadFields } from '../../../src/sheets/parts/identifyThread';
import { treeTables } from '../../core/catalogue/treeCatalogue';

const catalogue = readCatalogue(treeTables);
const typed: ThreadFields = { diameter: '', pitch: '', unit: 'mm', side: 'male' };

function thread(fields: Partial<ThreadFields>) {
  const found = identifyThread({ ...typed, ...fields }, catalogue);
  if (found.kind !== 'found') throw new Error(JSON.stringify(found));
  return found;
}

describe('a thread by caliper', () => {
  // Diameters and pitches: ISO 228-1, ASME B1.1, ISO 261, from memory; see the table of threads.
  test('33.3 mm is G 1 or 1 5/16-12, 0.09 mm apart: the threads are to be counted', () => {
    const { candidates, advice } = thread({ diameter: '33,3' });
    expect(candidates.slice(0, 2)).toMatchObject([
      { thread: '1 5/16-12', diameter: '33.34 mm', pitch: '12 per inch', offBy: '-0.04 mm' },
      { thread: 'G 1', diameter: '33.25 mm', pitch: '11 per inch', offBy: '+0.05 mm' },
    ]);
    expect(advice).toContain(
      '1 5/16-12 or G 1: 0.09 mm apart, less than a caliper can tell. Count the threads: 12 per inch or 11 per inch.',
    );
    expect(advice).toContain('G 1 or R 1: measure at both ends of the thread. A taper gets thicker.');
  });

  test('a counted pitch leaves nothing to be asked but the taper', () => {
    expect(thread({ diameter: '1.311', pitch: '12', unit: 'in' })).toMatchObject({
      candidates: [{ thread: '1 5/16-12', offBy: '-0.0015 in' }],
      advice: [],
    });
    expect(thread({ diameter: '33.3', pitch: '2.31' }).advice).toEqual([
      'G 1 or R 1: measure at both ends of the thread. A taper gets thicker.',
    ]);
  });

  // ISO 8434-1, from memory: M30x2 is the nut of tube 22 light and of tube 20 heavy.
  test('30.0 and 2.0 is M30x2 of a light DN 19 or a heavy DN 16', () => {
    const { candidates, advice } = thread({ diameter: '30.0', pitch: '2.0' });
    expect(candidates.map(each => each.thread)).toEqual(['M30x2']);
    expect(advice).toEqual([
      'M30x2 is used with 24° cone L, light DN 19 or 24° cone S, heavy DN 16. The thread does not decide it: measure the tube or the cone as well.',
    ]);
  });

  test('parts of the catalogue that have it are named; one without a thread by its end form and size', () => {
    expect(thread({ diameter: '22', pitch: '1.5' }).candidates[0]).toMatchObject({
      endForms: ['24° cone L DN 12'],
      fittings: ['Alder cone straight DN 12', 'Alder cone elbow DN 12'],
    });
    expect(thread({ diameter: '3/4', pitch: '16', unit: 'in' }).candidates[0]).toMatchObject({
      endForms: ['37° flare swivel DN 12'],
      fittings: ['Alder flare straight DN 12'],
    });
  });

  test('a female thread is measured inside', () => {
    // 22 − 1.0825 × 1.5 = 20.376 (ISO 68-1: 60° thread).
    expect(thread({ diameter: '20.4', pitch: '1.5', side: 'female' }).candidates[0]).toMatchObject({
      thread: 'M22x1.5',
      diameter: '20.38 mm',
      offBy: '+0.02 mm',
    });
  });

  test.each<[string, Partial<ThreadFields>, object]>([
    ['nothing typed', {}, { kind: 'blank' }],
    [
      'no number',
      { diameter: 'wide' },
      { kind: 'mistake', field: 'diameter', sentence: expect.stringMatching(/^Size is "wide": enter a number/) },
    ],
    ['inches among mm', { diameter: '3/4"' }, { kind: 'mistake', field: 'diameter', sentence: expect.stringMatching(/unit/) }],
    ['a pitch of 0', { diameter: '22', pitch: '0' }, { kind: 'mistake', field: 'pitch' }],
    [
      'nothing near',
      { diameter: '90' },
      { kind: 'none', sentence: expect.stringMatching(/^no male thread within 0.6 mm of 90 mm/) },
    ],
  ])('%s', (_, fields, expected) => expect(identifyThread({ ...typed, ...fields }, catalogue)).toMatchObject(expected));

  test('without a catalogue the standards still answer', () =>
    expect(identifyThread({ ...typed, diameter: '30', pitch: '2' }, undefined)).toMatchObject({
      kind: 'found',
      candidates: [{ thread: 'M30x2', endForms: [], fittings: [] }],
    }));
});

describe('a hose by bore and outside diameter', () => {
  const outsides = ['Outside diameter (mm)', 21, 36, 40, ''];
  const sized = readCatalogue({ ...treeTables, hoses: treeTables.hoses.map((row, index) => [...row, outsides[index]!]) });
  const hose = (fields: Partial<HoseFields>) => identifyHose({ bore: '', outside: '', unit: 'mm', ...fields }, sized);
  const names = (fields: Partial<HoseFields>) => {
    const found = hose(fields);
    return found.kind === 'found' ? found.candidates.map(each => each.hose) : found.kind;
  };

  test('nearest first; a hose whose outside diameter is not stated comes last', () => {
    expect(names({ bore: '25', outside: '39.5' })).toEqual(['Birch DN 25', 'Alder DN 25', 'Willow DN 25']);
    expect(hose({ bore: '25', outside: '39.5' })).toMatchObject({
      candidates: [
        { sizes: ['bore 25.4 mm (-0.4 mm)', 'outside diameter 40 mm (-0.5 mm)'], pressure: '380 bar' },
        {},
        { sizes: ['bore 25.4 mm (-0.4 mm)', 'outside diameter not stated'] },
      ],
    });
  });

  test('one size is enough, in inches as well', () => {
    expect(names({ outside: '21.2' })).toEqual(['Alder DN 12']);
    expect(hose({ bore: '1/2', unit: 'in' })).toMatchObject({
      candidates: [{ hose: 'Alder DN 12', sizes: ['bore 0.5 in (0 in)'] }],
    });
  });

  test.each<[Partial<HoseFields>, object]>([
    [{}, { kind: 'blank' }],
    [{ bore: 'x' }, { kind: 'mistake', field: 'bore' }],
    [
      { bore: '25', outside: '20' },
      { kind: 'mistake', field: 'outside', sentence: 'Not above the bore' },
    ],
    [{ bore: '70' }, { kind: 'none' }],
  ])('%j', (fields, expected) => expect(hose(fields)).toMatchObject(expected));
});
