import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { paneInStates, SAMPLES } from './paneInStates';
import { openPlace, openSheet, settled } from './tryOut';

/*
 * What the views look like once something was found, planned, written or refused: the rules of axe-core in light and dark, nothing cut off at
 * 320 points and at 160 (320 at 200 %), nothing lost in a contrast theme, light or dark. A picture of each state is left in artifacts/.
 * Those of the catalogue, the duty, quotes, the week and the bench; those of readings and records: accessibilityReadings.test.ts.
 */

const { page, pane, complaints, press, fill, says, unfold, states } = paneInStates('catalogue.xlsx');

beforeAll(() => openSheet(page(), 'Jobs'));

states([
  [
    'parts that were found, one unfolded, and a question before a cell is written over',
    'parts',
    async () => {
      await openPlace(page(), 'parts/search');
      await pane().getByRole('searchbox').fill('larch dn 12 hose');
      await press('Larch DN 12');
      await press('Insert name');
      await says('Write over?');
    },
  ],
  [
    'a thread that was identified',
    'thread',
    async () => {
      await openPlace(page(), 'parts/identify');
      const thread = pane().getByRole('region', { name: 'Thread' });
      await thread.getByLabel(/diameter \(mm\)$/).fill('20.9');
      await thread.getByLabel(/^Pitch \(mm\)/).fill('1.814');
      await thread.getByRole('list', { name: 'Threads it may be' }).waitFor();
    },
  ],
  [
    'files that were read, with a problem, and differences shown',
    'load',
    async () => {
      await openPlace(page(), 'parts/load');
      const csv = (text: string) => ({ name: 'hoses.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
      const hoses = readFileSync(join(SAMPLES, 'catalogue/hoses.csv'), 'utf8');
      const changed = hoses.replace(',225,', ',215,').replace(',15,215,', ',wide,215,');
      await pane()
        .getByLabel('Files of parts data')
        .setInputFiles([csv(changed)]);
      await press(/^Hoses: 1 changed/);
      await says(/Working pressure 225 → 215/);
    },
  ],
  [
    'findings of the catalogue',
    'checks',
    async () => {
      await openPlace(page(), 'parts/checks');
      await press('Check the catalogue');
      await says(/findings? in 48 hoses|Nothing to correct/);
    },
  ],
  [
    'a duty whose form is refused',
    'duty-refused',
    async () => {
      await openPlace(page(), 'quote/duty');
      await says(/^Parts data: CAT-/);
      await fill('Fluid', 'mineral oil');
      await fill(/^Working pressure/, 'a lot');
      await press('Find hoses');
      await says(/^\d+ fields? to correct$/);
    },
  ],
  [
    'hoses that suit a duty, with route, twist and length drawn',
    'duty',
    async () => {
      await fill(/^Working pressure/, '180');
      await fill(/^Fluid, hottest/, '80');
      await fill(/^Fluid, coldest/, '-10');
      await unfold('Flow and viscosity');
      await pane().getByLabel('Viscosity', { exact: true }).selectOption('46');
      await fill(/^Flow \(L\/min\)/, '60');
      await fill(/^Fastest velocity/, '5.5');
      await unfold('Route and bends');
      await fill('Length (mm) of part 1', '300');
      await press('Add bend');
      await fill('Radius (mm) of part 2', '220');
      await press('Add straight');
      await fill('Length (mm) of part 3', '250');
      await unfold('Ends and quantity');
      await fill(/^Angle A/, '90');
      await fill(/^Angle B/, '45');
      await fill(/^Twist/, '120');
      await press('Find hoses');
      await says(/hoses suit, cheapest first/);
      await pane()
        .getByRole('img', { name: /^Route of/ })
        .first()
        .scrollIntoViewIfNeeded();
    },
  ],
  [
    'hoses that were ruled out, one with its route',
    'duty-ruled-out',
    async () => {
      await press(/^Ruled out: \d+/);
      await press('Show where it bends too tight');
      await pane()
        .getByRole('img', { name: /too tight, the hose needs/ })
        .scrollIntoViewIfNeeded();
    },
  ],
  [
    'a duty that no hose suits',
    'duty-none',
    async () => {
      await fill(/^Working pressure/, '1800');
      await press('Find hoses');
      await says(/^No hose of the catalogue suits/);
    },
  ],
  [
    'a quote that is refused',
    'quote-refused',
    async () => {
      await openPlace(page(), 'quote/quote');
      // While the job sheet is read, the button may move away from under the pointer: it is pressed again then.
      const refusal = pane().getByText(/Margin is blank/);
      for (let time = 0; time < 4 && (await refusal.count()) === 0; time++) {
        await press('Write the quote as a new sheet');
        await page().waitForTimeout(1500);
      }
      await says(/Margin is blank/);
    },
  ],
  [
    'a quote that was written, and its paper',
    'quote',
    async () => {
      await fill(/^Margin/, '40 %');
      await press('Write the quote as a new sheet');
      await pane().getByRole('button', { name: 'Quote', exact: true }).waitFor();
      await settled(page());
      await fill('Your name', 'Beet harvest workshop (invented)');
      await fill('Quote number', '2026-001');
      await press('Write the quote for the customer');
      await says('Quotes that were sent');
      await press('Columns of the paper');
    },
  ],
  [
    'a purchase list that was written',
    'purchase',
    async () => {
      await openSheet(page(), 'Jobs');
      await openPlace(page(), 'quote/to-buy');
      await press('Write the purchase list as a new sheet');
      await pane().getByRole('button', { name: 'Purchase list', exact: true }).waitFor();
    },
  ],
  [
    'a rise of prices, compared',
    'what-if',
    async () => {
      await openPlace(page(), 'quote/what-if');
      await fill('All (%)', '5');
      await press('Write the comparison as new sheets');
      await pane().getByRole('button', { name: 'What-if', exact: true }).waitFor();
    },
  ],
  [
    'an order of work',
    'order',
    async () => {
      await openSheet(page(), 'Week');
      await openPlace(page(), 'week/order');
      await says(/set-up|change/i);
    },
  ],
  [
    'cuts that were planned and written',
    'cuts',
    async () => {
      await openPlace(page(), 'week/cut-list');
      await fill(/^Kerf/, '3');
      await fill(/^Squaring/, '25');
      await fill(/^Keep from/, '500');
      await press('Plan the cuts');
      await pane()
        .getByRole('img', { name: /to scale/ })
        .first()
        .waitFor();
      await press('Write cut list, rack and pieces');
      await says(/^Written:/);
      await settled(page());
    },
  ],
  [
    'a piece at the bench',
    'piece',
    async () => {
      await openPlace(page(), 'bench/entry');
      await fill('Piece or tag', 'W41-01-1');
      await press('Find');
      await says(/^Piece W41-01-1: /);
    },
  ],
  [
    'a reading far from the target, asked about',
    'verdict',
    async () => {
      await pane().getByLabel('Reading 1').waitFor();
      await pane().getByLabel('Reading 1').focus();
      await page().keyboard.type('28.1');
      await page().keyboard.press('Enter');
      await says(/above the target/);
    },
  ],
]);

it('complained about nothing', () => expect(complaints()).toEqual([]));
