import { excelCall } from './excelCall';
import { listFunctions } from './listFunctions';
import { rowFunctions } from './rowFunctions';
import { processorTime } from '../processorTime';

/** A cell holds up to 32,767 characters (Excel specifications and limits, Microsoft support). */
const N = 32_000;
const texts = ['1'.repeat(N), `1${' '.repeat(N)}x`, 'Alder '.repeat(N / 6), '1,'.repeat(N / 2), "1'".repeat(N / 2)];
/** Far more than a sentence of ours, far less than what came. */
const LONGEST_ANSWER = 400;
const BOUND = 2_000;

type Named = readonly [name: string, cells: unknown[][]];
const rows: [string, Named[]][] = rowFunctions.map(({ id, arguments: all }) => [
  id,
  Object.entries(all).map(([name, argument]) => [name, 'row' in argument ? [[...argument.row]] : [[argument.whole]]]),
]);
const lists: [string, Named[]][] = listFunctions.map(({ id, lists: columns, whole }) => [
  id,
  [
    ...Object.entries(columns).map(([name, cells]): Named => [name, cells.map(row => [...row])]),
    ...Object.entries(whole).map(([name, value]): Named => [name, [[value]]]),
  ],
]);

test.each([...rows, ...lists])('%s answers a text of 32,000 characters at once, and does not repeat it', async (id, named) => {
  for (const text of texts) {
    for (const [index] of named.entries()) {
      const cells = named.map(([, block], at) =>
        at === index
          ? block.map((row, line) => (line === 0 ? row.map((cell, column) => (column === 0 ? text : cell)) : row))
          : block,
      );
      const spent = processorTime();
      const answer = await excelCall(id, ...cells);
      expect(spent()).toBeLessThan(BOUND);
      // A name of a list is answered as it came; every sentence is short.
      for (const cell of answer.flat())
        if (String(cell).startsWith('#')) expect(String(cell).length).toBeLessThan(LONGEST_ANSWER);
    }
  }
});

test.each(['CONTROLLIMITS', 'CAPABILITY'])('%s takes a bare value for one cell, and says what is wrong with it', async id => {
  const rest = id === 'CAPABILITY' ? [8, 20] : [];
  const [[answer]] = (await excelCall(id, 12.5 as never, ...(rest as never[]))) as [[string]];
  expect(answer).toMatch(/^#VALUE! .*subgroups?/i);
});
