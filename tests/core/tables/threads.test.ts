import { threadFamilies } from '../../../src/core/tables/threads';

const byName = new Map(
  threadFamilies.flatMap(({ threads }) => threads.map(([name, diameter, pitch]) => [name as string, [diameter, pitch]])),
);

test('five families, 61 threads, each name once', () => {
  expect(threadFamilies.map(({ standard, threads }) => [standard, threads.length])).toEqual([
    ['ISO 228-1', 10],
    ['ISO 7-1', 9],
    ['ISO 261', 16],
    ['ASME B1.1', 17],
    ['ASME B1.20.1', 9],
  ]);
  expect(byName.size).toBe(61);
});

test('diameters rise within each family', () => {
  for (const { threads } of threadFamilies) {
    const diameters = threads.map(([, diameter]) => Number(diameter));
    expect(diameters).toEqual([...diameters].sort((a, b) => a - b));
  }
});

/** ISO 228-1, ASME B1.1 and B1.20.1, from memory (the check values of the project). */
test.each([
  ['G 1/8', '9.728', '28'],
  ['G 1/2', '20.955', '14'],
  ['G 5/8', '22.911', '14'],
  ['G 1', '33.249', '11'],
  ['G 2', '59.614', '11'],
  ['M30x2', '30', '2'],
  ['3/4-16', '0.75', '16'],
  ['1 5/16-12', '1.3125', '12'],
  ['1/2-14 NPT', '0.840', '14'],
])('%s: outside diameter %s, pitch %s', (name, diameter, pitch) => expect(byName.get(name)).toEqual([diameter, pitch]));

test('names say what the numbers say; there is no G 5/16', () => {
  for (const [name, [diameter, pitch]] of byName) {
    const metric = /^M(\d+)x([\d.]+)$/.exec(name);
    if (metric) expect([diameter, pitch]).toEqual(metric.slice(1));
    const unified = /^(?:(\d+) )?(?:(\d+)\/(\d+)|(\d+))-(\d+)$/.exec(name);
    if (!unified) continue;
    const [, whole = '0', top = '0', bottom = '1', only = '0', count] = unified;
    expect([Number(diameter), pitch]).toEqual([Number(whole) + Number(top) / Number(bottom) + Number(only), count]);
  }
  expect(byName.has('G 5/16')).toBe(false);
});
