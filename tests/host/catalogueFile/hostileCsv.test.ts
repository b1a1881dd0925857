import { readCsv } from '../../../src/host/catalogueFile/readCsv';
import { processorTime } from '../../processorTime';

/** Just below the 50 MB that a file may have. */
const BYTES = 49 * 2 ** 20;
/** A person waits so long, on a machine with other work; each was a matter of many minutes where what is left of a row is read again and again. */
const BOUND = 15_000;

function filled(pattern: string): Uint8Array {
  const bytes = new Uint8Array(BYTES);
  bytes.set(new TextEncoder().encode(pattern));
  for (let done = pattern.length; done < BYTES; done *= 2) bytes.copyWithin(done, 0, done);
  return bytes;
}

test.each([
  ['quotation marks', '"', /row 1 has more than a million characters. Is a quotation mark/],
  ['quotation marks and letters', '"x', /row 1 has more than a million characters/],
  ['quotation marks and commas', '",', /row 1 has more than a million characters|columns/],
  ['quotation marks, a space between', '" ', /row 1 has more than a million characters/],
  ['one letter', 'x', /row 1 has more than a million characters/],
  ['commas', ',', /row 1 has more than a million characters|columns/],
  ['line ends', '\n', /rows/],
  ['quotation marks and line ends', '"\n', /rows|row 1/],
  ['a quotation mark that opens in every row', 'Alder;"\n', /rows|row 1/],
])(
  '49 MB of %s are refused in bounded time',
  async (_, pattern, sentence) => {
    const file = filled(pattern);
    const spent = processorTime();
    await expect(readCsv('parts.csv', file)).rejects.toThrow(sentence);
    expect(spent()).toBeLessThan(BOUND);
  },
  60_000,
);
