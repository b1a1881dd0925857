import { Decimal } from '../../../src/core/units/decimal';
import type { Change } from '../../../src/workbook/workbook';
import { cutLimits, lineTitle } from '../../../src/sheets/jobs/benchCard';
import { benchSteps, stopsOf } from '../../../src/sheets/benchcard/benchSteps';
import { cardParts } from '../../../src/sheets/benchcard/cardParts';
import { cardPage } from '../../../src/sheets/benchcard/cardPage';
import { clockPicture } from '../../../src/sheets/print/clockPicture';
import { cardSheet } from '../../../src/sheets/benchcard/cardSheet';
import { noCrimpData, noPressure } from '../../../src/sheets/jobs/missingDataNote';
import { proofText } from '../../../src/sheets/benchcard/proofPressure';
import { tagProblems, tagsOf } from '../../../src/sheets/tags/tag';
import { cardsOf, demoCards, demoJobs, demoOptions } from '../jobs/demoCards';

const [first, second, third] = demoCards as [(typeof demoCards)[0], (typeof demoCards)[0], (typeof demoCards)[0]];

test('a card holds what the row says of its ends: one column for both, or one for each', () => {
  expect(
    first.ends.map(({ die, dial, diameter, smallest, largest, angle }) => [
      die,
      dial,
      `${diameter}`,
      `${smallest}`,
      `${largest}`,
      angle,
    ]),
  ).toEqual([
    ['D23', '471', '23.4', '23.2', '23.6', 45],
    ['D23', '468', '23.6', '23.4', '23.8', 90],
  ]);
});

test('limits of the cut leave the finished length within its limits', () => {
  const { shortest, longest } = cutLimits(first)!;
  // 1250 within 1246 … 1262, cut-offs of 81.5: 1168.5, rounded to 1169 for the bench.
  expect([`${first.cutLength}`, `${shortest}`, `${longest}`]).toEqual(['1169', '1164.5', '1180.5']);
});

test('a quantity that cannot be read stops the card instead of making one; a line of none gets no card', () => {
  const withQuantity = (cell: string | number) => {
    const values = demoJobs.values.map(row => [...row]);
    values[1]![values[0]!.indexOf('Quantity')] = cell;
    return cardsOf({ ...demoJobs, values });
  };
  const [half, blank] = [withQuantity(2.5)[0]!, withQuantity('')[0]!];
  expect([stopsOf(half)[0], stopsOf(blank)[0]]).toEqual([
    'quantity is 2.5: enter a whole number',
    'quantity is blank: fill it in',
  ]);
  expect(cardPage([half], demoOptions)).toMatch(/<b class="count">\? off<\/b>.*<b>Cut<\/b> \? × 1169 mm/s);
  const options = { maker: 'Beet workshop (invented)', prefix: '', today: '2026-10-05' };
  expect(tagsOf([half], options)).toEqual([]);
  expect(tagProblems([half], [], options)).toEqual(['STOP, so no tags: line 1.']);
  expect(withQuantity(0).map(card => card.line)).toEqual(['2', '3']);
});

test('a card is called by its line, else by its row', () => {
  expect([lineTitle(first), lineTitle({ ...first, line: 'row 10' }), lineTitle({ ...first, label: '' })]).toEqual([
    'Line 1: Harvester 3, topper lift',
    'Row 10: Harvester 3, topper lift',
    'Line 1',
  ]);
});

test('every card carries a caution of its own: cards are cut apart', () => {
  expect(cardPage(demoCards, demoOptions).match(/class="caution">Makers’ data first\..*?never feel for leaks/g)).toHaveLength(3);
});

test('the steps stand in working order, each a short sentence that says what to do', () => {
  for (const { name, text } of benchSteps(first, demoOptions.rule)) expect(`${name} ${text}`).toMatch(/^[A-Z].{8,118}\.$/);
  expect(benchSteps(first, demoOptions.rule).map(step => step.name)).toEqual([
    'Cut',
    'Clean',
    'Slide on',
    'Mark',
    'Push',
    'Crimp end A:',
    'Measure end A',
    'Turn',
    'Crimp end B:',
    'Measure end B',
    'Look',
    'Test',
    'Flush',
    'Tag',
  ]);
});

test('skiving is a step where there is something to skive or the data do not say', () => {
  const skive = (card: typeof first) => benchSteps(card, demoOptions.rule).find(step => step.name === 'Skive')?.text;
  expect([skive(first), skive(second), skive(third)]).toEqual([
    undefined,
    'as the maker says (not stated here) at each end.',
    '2.5 mm outside at each end.',
  ]);
});

test('a line without crimp data is stopped, and so are two bent ends without an angle', () => {
  expect(stopsOf(first)).toEqual([]);
  expect(stopsOf(third)).toEqual([
    'Ends A and B: die, dial, crimp diameter not stated: do not assemble before the maker’s data are here',
  ]);
  const bent = { ...second, ends: [{ ...second.ends[0], angle: 45 }, second.ends[1]] as const };
  expect(stopsOf(bent)).toEqual(['Both ends are bent, but the sheet gives no twist angle: ask before you crimp end B']);
});

test('proof pressure is twice the maximum working pressure, held 30 to 60 s (ISO 6605:2017, 5.2)', () => {
  expect(proofText(new Decimal(275), 'bar', demoOptions.rule)).toBe(
    'at 550 bar for 30 to 60 s (2 × working pressure, ISO 6605:2017, 5.2). No leaks.',
  );
  expect(proofText(undefined, 'bar', demoOptions.rule)).toMatch(/^nothing before its working pressure is known/);
});

test('a line that must not be made: STOP with its reason, no pressure, and no test pressure', () => {
  const values = demoJobs.values.map(row => [...row]);
  values[1]![values[0]!.indexOf('Cut length (mm)')] = 1;
  const [card] = cardsOf({ ...demoJobs, values });
  expect(stopsOf(card!)[0]).toMatch(/^cut length 1 mm cannot belong to an overall length of 1250 mm/);
  const page = cardPage([card!], demoOptions);
  expect(page).toMatch(/<b>STOP<\/b> cut length 1 mm/);
  expect(page).toContain('working pressure <b>none: STOP</b>');
  expect(page).toContain('<b>Test</b> no piece while this card says STOP.');
  expect(page).not.toMatch(/550 bar|275 bar/);
});

test.each(['quarter turn', "90'"])('a twist of %s cannot be read: two bent ends without an angle are stopped', twist => {
  const values = demoJobs.values.map(row => [...row]);
  values[1]![values[0]!.indexOf('Twist')] = twist;
  const [card] = cardsOf({ ...demoJobs, values });
  expect(card!.notes[0]).toMatch(new RegExp(`^twist angle is "${twist}"`));
  expect(stopsOf(card!)).toEqual(['Both ends are bent, but the sheet gives no twist angle: ask before you crimp end B']);
});

test('the print page holds every card, the cautions as a foot that every page repeats, and escapes what the sheet says', () => {
  const page = cardPage(demoCards, demoOptions);
  expect(page.match(/class="card"/g)).toHaveLength(3);
  expect(page).toContain('Share steering &lt;left&gt;');
  expect(page).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
  expect(page).toMatch(/<tfoot>.*Never feel for leaks by hand.*<\/tfoot>/);
});

test('every piece has its row of readings, on further cards of its line where one is full; a line over two lots is two groups', () => {
  const pieces = Array.from({ length: 9 }, (_, index) => ({
    piece: `H3-117-${index + 1}`,
    lot: index < 4 ? 'L70' : 'L71',
    reel: index < 4 ? 'A1' : 'A2',
    useBy: '2032-10',
    isScrapped: index === 1,
  }));
  const card = { ...second, quantity: 9, pieces };
  expect(cardParts(card).map(part => part.pieces.length)).toEqual([6, 3]);
  // Eight that are good, and one that nobody has planned yet.
  const page = cardPage([card], demoOptions);
  expect(page.match(/<th scope="row">(?:H3-117-\d|10)<\/th>/g)).toHaveLength(9);
  expect(page).toContain('H3-117-1, H3-117-3, H3-117-4: lot L70, reel A1; H3-117-5 … 9: lot L71, reel A2 · use by 2032-10');
  const rows = cellsOf(cardSheet('Bench cards', [card], demoOptions));
  expect(
    rows.filter(
      row => String(row[0]).startsWith('H3-117-') && row.length === 1 + row.slice(1).filter(cell => cell === '').length,
    ),
  ).toHaveLength(8 + 1);
  expect(rows.map(row => String(row[0])).filter(text => /card \d of 2$/.test(text))).toHaveLength(2);
});

const cellsOf = (changes: readonly Change[]) => changes.flatMap(change => (change.kind === 'values' ? change.values : []));

test('the worksheet has a card a line, breaks only between cards, cautions on every page', () => {
  const cards = Array.from({ length: 7 }, (_, index) => ({ ...first, line: String(index + 1) }));
  const changes = cardSheet('Bench cards', cards, demoOptions);
  const rows = cellsOf(changes);
  const titles = rows.flatMap((row, index) => (String(row[0]).startsWith('Line ') ? [index + 1] : []));
  expect(titles).toHaveLength(7);
  const page = changes.find(change => change.kind === 'page');
  const breaks = page?.kind === 'page' ? page.page.breaksBefore! : [];
  expect(breaks.length).toBe(3);
  for (const row of breaks) expect(titles).toContain(row);
  expect(rows.filter(row => /Local law, codes/.test(String(row[0])))).toHaveLength(4);
  expect(page).toMatchObject({ page: { orientation: 'portrait', printArea: `A1:K${rows.length}` } });
});

test('the worksheet names both couplings in full and has a clock picture where two bent ends are turned', () => {
  const turned = {
    ...second,
    ends: [
      { ...second.ends[0], angle: 90 },
      { ...second.ends[1], angle: 45 },
    ] as const,
    twist: 120,
  };
  const changes = cardSheet('Bench cards', [turned], demoOptions);
  const rows = cellsOf(changes);
  expect(rows.flatMap(row => (String(row[0]).startsWith('End ') ? [row] : []))[0]![0]).toContain(
    `End A: ${second.ends[0].fitting}`,
  );
  const pictures = changes.flatMap(change => (change.kind === 'picture' ? [change] : []));
  expect(pictures).toHaveLength(1);
  const [{ at, svg }] = pictures as [(typeof pictures)[0]];
  expect(svg).toBe(clockPicture(120));
  const firstStep = rows.findIndex(row => row[1] === 'Cut') + 1;
  expect(at.address).toBe(`J${firstStep}:K${firstStep + 7}`);
  const beside = rows.slice(firstStep - 1, firstStep + 7).map(row => String(row[2]).length);
  expect(Math.max(...beside)).toBeLessThanOrEqual(86);
});

test('where no line has crimp data, it is said once where they come from; on the try-out page also which sample has them', () => {
  const bare = demoCards.map(card => {
    const [a, b] = card.ends.map(({ end, fitting }) => ({ end, fitting }));
    return { ...card, ends: [a!, b!] as const };
  });
  expect(noCrimpData(demoCards, 'excel')).toBeUndefined();
  expect(noCrimpData([...bare, first], 'excel')).toBeUndefined();
  expect(noCrimpData(bare, 'excel')).toMatch(/^Every card says STOP.*Parts › Load\)\.$/);
  expect(noCrimpData(bare, 'try-out')).toMatch(/the sample Catalogue has them: its sheets Jobs and Week\.$/);
  expect(noPressure('try-out')).toMatch(/^No selected line has a working pressure.*sample Catalogue/);
});
