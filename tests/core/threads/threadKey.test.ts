import { threadFamilies } from '../../../src/core/tables/threads';
import { threadKey } from '../../../src/core/threads/threadKey';

test.each([
  ['M22x1.5', 'm22 X 1,5', 'M22×1.50', 'M 22 x 1.5 - 6g'],
  ['G 1/2', 'g1/2', 'G 1/2 A', '1/2 BSPP', '1/2" BSP'],
  ['R 1 1/2', 'R1-1/2', 'Rp 1 1/2', '1 1/2 BSPT'],
  ['1/2-14 NPT', '1/2 NPT', 'NPT 1/2', '1/2"-14 NPTF'],
  ['3/4-16', '3/4-16 UNF', '3/4"-16 UNF-2B', '0.75-16'],
  ['1 5/16-12', '1 5/16-12 UN', '1-5/16-12 UN-2A'],
])('%s is also written %s', (...texts) => expect(new Set(texts.map(threadKey)).size).toBe(1));

test('each thread of the table differs from all others', () => {
  const names = threadFamilies.flatMap(({ threads }) => threads.map(([name]) => name));
  expect(new Set(names.map(threadKey)).size).toBe(names.length);
  expect(threadKey('G 1/2')).not.toBe(threadKey('G 1 1/2'));
  expect(threadKey('1 1/16-12')).not.toBe(threadKey('11/16-12'));
});

test('what is no thread of these families stays itself', () => expect(threadKey(' Bayonet  40 ')).toBe('bayonet 40'));
