import '../../host/customFunctions';
import { assembly, crimpSetup, unitCost } from '../../../src/functions/assembly';
import { catalogue } from '../../../src/functions/catalogue';
import { hoseData } from '../../../src/functions/parts';
import { largeCatalogue } from '../../cases/largeCatalogue';
import { processorTime, ROOM } from '../../processorTime';

/* Demanded: 50,000 crimp rows in less than a second, 10,000 look-ups in one call in less than 50 ms. Time of the processor is counted, so
   that a machine that is busy with other tests does not matter. */
const HOSES = 200;
const FITTINGS = 250;
const { hoses, fittings, crimps, rates } = largeCatalogue(HOSES, FITTINGS);

/** Time of the processor of the quickest of five runs, in ms. */
function quickest(run: () => unknown): number {
  const times = Array.from({ length: 5 }, () => {
    const spent = processorTime();
    run();
    return spent();
  });
  return Math.min(...times);
}

const jobs = Array.from({ length: 10_000 }, (_, i) => [`Alder hose ${i % HOSES}`]);
const ends = Array.from({ length: 10_000 }, (_, i) => [`alder cone ${(i * 7) % FITTINGS}`]);
const lengths = Array.from({ length: 10_000 }, (_, i) => [600.5 + (i % 1000)]);
const one = (value: unknown): any[][] => [[value]];

test('reads 50,000 crimp rows in about a second', () => {
  let handle: any[][] = [];
  const time = quickest(() => (handle = catalogue(hoses, fittings, crimps)));
  expect(handle[0]![0]).toMatch(/200 hoses, 250 fittings, 50000 crimps\)$/);
  expect(time).toBeLessThan(1000 * ROOM);
});

describe('10,000 look-ups in one call', () => {
  let handle: any[][];
  beforeAll(() => (handle = catalogue(hoses, fittings, crimps, null as never, rates)));

  test.each([
    ['HOSEDATA', () => hoseData(handle, jobs, one('bore')), 50],
    ['CRIMPSETUP', () => crimpSetup(handle, jobs, ends, null as never), 50],
    ['ASSEMBLY', () => assembly(handle, jobs, ends, ends, lengths), 50],
    ['UNITCOST', () => unitCost(handle, jobs, ends, ends, lengths, one(10)), 100],
  ])('%s', (name, run, limit) => {
    const time = quickest(run);
    if (process.env.SHOW_TIMES) console.log(`${name}: ${time.toFixed(0)} ms`);
    expect(run()).toHaveLength(10_000);
    expect(time).toBeLessThan(limit * ROOM);
  });
});
