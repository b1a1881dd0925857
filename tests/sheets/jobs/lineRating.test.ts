import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { sourcesOf } from '../../../src/sheets/benchcard/benchSteps';
import { gatherCards } from '../../../src/sheets/jobs/gatherCards';
import { stopSentence } from '../../../src/sheets/jobs/jobLine';
import { ratingNotes, ratingText } from '../../../src/sheets/jobs/lineRating';
import { quoteLines } from '../../../src/sheets/jobs/quoteLine';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { demoQuotes } from '../quote/demoQuotes';

const mm = measureUnit('length', 'mm')!;
const HEAD = ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Quantity', 'Temperature (°C)', 'Fluid'];
const [cone, elbow, large] = ['Alder cone straight DN 12', 'Alder cone elbow DN 12', 'Alder cone straight DN 25'];

const book = (heading: string, ...rows: FakeCell[][]) => {
  const head = HEAD.map(each => (each === 'Temperature (°C)' ? heading : each));
  return fakeWorkbook({ ...demoQuotes(), Jobs: [head, ...rows] }, { sheet: 'Jobs', address: 'A2' }).workbook;
};
const linesOf = async (...rows: FakeCell[][]) =>
  (await readJobs(book('Temperature (°C)', ...rows), { step: { value: new Decimal(1), unit: mm } })).lines;

// The invented catalogue: Alder DN 25 165 bar, Derating 60 °C 1, 80 °C 0.9, 100 °C 0.8; Alder DN 12 has no rows, its couplings 250 bar.
test('a rating says at which temperature it holds, and what has not been checked', async () => {
  const lines = await linesOf(
    ['Alder DN 25', large!, large!, 700, 1, 80, 'mineral oil'],
    ['Alder DN 25', large!, large!, 700, 1, 61, ''],
    ['Alder DN 12', cone!, elbow!, 1250, 1, 80, 'mineral oil'],
    ['Alder DN 12', cone!, elbow!, 1250, 1, '', ''],
    ['Alder DN 12', '', '', 1250, 1, '', 'mineral oil'],
  );
  expect(lines.map(line => stopSentence(line) || ratingText(line))).toEqual([
    '148.5 bar at 80 °C; mineral oil',
    // The next stated temperature at or above 61 is 80.
    '148.5 bar at 61 °C; fluid not checked',
    '250 bar at 80 °C, no derating stated; mineral oil',
    '250 bar; temperature not stated: not derated; fluid not checked',
    'hose alone: no rating of an assembly; temperature not stated: not derated; mineral oil',
  ]);
  // Cards print what is to be known of a rating; a cut list has no use for it.
  expect(lines.map(ratingNotes)).toEqual([
    ['rated at 80 °C'],
    ['rated at 61 °C'],
    ['no derating stated for Alder DN 12'],
    [],
    [],
  ]);
  expect(lines.flatMap(({ notes }) => notes)).toEqual([]);
});

test('a card says at which temperature its working pressure holds, or that no derating is stated', async () => {
  const book80 = book(
    'Temperature (°C)',
    ['Alder DN 25', large!, large!, 700, 1, 80, 'mineral oil'],
    ['Alder DN 12', cone!, elbow!, 1250, 1, 80, 'mineral oil'],
  );
  const { cards } = await gatherCards(book80, { unit: 'mm', step: new Decimal(1), machine: '', pressureUnit: 'bar' });
  expect(cards.map(card => [`${card.workingPressure}`, sourcesOf(card)])).toEqual([
    ['148.5', expect.stringContaining('To know: rated at 80 °C.')],
    ['250', expect.stringMatching(/To know: .*no derating stated for Alder DN 12/)],
  ]);
});

test('a hose alone has limits of heat and fluid, too', async () => {
  const lines = await linesOf(
    ['Alder DN 12', '', '', 1250, 1, 101, 'mineral oil'],
    ['Alder DN 12', '', '', 1250, 1, 80, 'petrol'],
    ['Alder DN 12', '', '', 1250, 1, 80, 'water-glycol'],
  );
  expect(lines.map(stopSentence)).toEqual([
    'hotter than Alder DN 12 allows: 101 °C, at most 100 °C',
    "fluid not the hose's: Alder DN 12 is for mineral oil, water glycol, not petrol",
    '',
  ]);
});

test('a quote takes temperatures in the catalogue’s unit, and formulas keep blank cells blank', async () => {
  const row = ['Alder DN 25', large!, large!, 700, 1, 176, 'mineral oil'];
  const { lines } = await quoteLines(book('Temperature (°F)', row, [...row.slice(0, 5), '', '']), mm);
  expect(lines.map(({ temperature, fluid }) => [temperature?.toDecimalPlaces(9).toNumber(), fluid])).toEqual([
    [80, 'mineral oil'],
    [undefined, ''],
  ]);
  expect(lines[0]!.formulas).toMatchObject({
    temperature: '=IF(LEN(Jobs!F2)=0,"",(Jobs!F2-32)/1.8)',
    fluid: '=IF(LEN(Jobs!G2)=0,"",Jobs!G2)',
  });
  expect(Object.keys(lines[1]!.formulas)).not.toContain('temperature');
});
