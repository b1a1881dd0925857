import { Decimal } from '../../src/core/units/decimal';
import { measureUnit } from '../../src/core/units/measureUnit';
import { readJobs, type JobWishes } from '../../src/sheets/jobs/readJobs';
import { stopSentence } from '../../src/sheets/jobs/jobLine';
import { pieceBook } from '../../src/sheets/pieces/pieceBook';
import { GONE_OFF, madePieces } from '../../samples/sources/workshop/sixWeeks';
import { openSample } from './openSample';

const wishes: JobWishes = { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } };
const here = { sheet: 'This week', address: 'B11' };

describe('the workbook to begin with', () => {
  test('has lines to make, and one line for each reason not to', async () => {
    const { lines } = await readJobs(await openSample('workshop.xlsx', here), wishes);
    const standing = new Map(lines.map(line => [line.line, line.standing.kind]));
    expect(['2', '3', '4', '5', '6', '7', '8', '9'].map(line => standing.get(line))).toEqual(Array(8).fill('ready'));
    const stops = lines.filter(({ standing: { kind } }) => kind === 'stop').map(line => [line.line, stopSentence(line)]);
    expect(stops).toEqual([
      ['10', expect.stringContaining('too short: 89 mm of free hose')],
      ['11', expect.stringContaining('families differ')],
      ['12', expect.stringContaining('sizes differ')],
      ['13', expect.stringContaining('Larch DN 13')],
      ['14', expect.stringContaining('hotter than Alder DN 12 allows')],
      ['15', expect.stringContaining('hotter than Larch DN 12 allows with HFC')],
      ['16', expect.stringContaining('date')],
      ['17', expect.stringContaining('about a metre')],
      ['18', expect.stringContaining('disagrees with overall length less cut-offs, 1745 mm')],
      ['19', 'its status says on hold'],
    ]);
  });

  test('keeps the pieces of six weeks; from week 41 on the machine is off, and what is out of spec is scrapped', async () => {
    const { pieces } = await pieceBook(await openSample('workshop.xlsx', here));
    expect(pieces!.pieces).toHaveLength(madePieces().length);
    const scrapped = pieces!.pieces.filter(({ status }) => status === 'scrapped');
    expect(scrapped.length).toBeGreaterThan(5);
    expect(scrapped.every(({ order }) => Number(order.slice(1)) >= GONE_OFF.fromWeek)).toBe(true);
  });
});
