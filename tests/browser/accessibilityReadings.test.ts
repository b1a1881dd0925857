import { paneInStates } from './paneInStates';
import { openPlace, openSheet } from './tryOut';

/*
 * The views of columns, readings, records and gauges in the states that accessibilityStates.test.ts tells of, with the same checks.
 */

const { page, pane, complaints, press, fill, says, open, states } = paneInStates('measurement-book.xlsx');

states([
  [
    'crimps that were analysed, with limits and machine unfolded',
    'analysis',
    async () => {
      await openSheet(page(), 'Week 40');
      await openPlace(page(), 'qa/analysis');
      await says(/All combinations crimp/);
      await press('Limits and machine');
      await pane().locator('svg [aria-label="dot"], [role=img] svg').first().waitFor();
    },
  ],
  [
    'columns that were added, with rows that need a look',
    'columns',
    async () => {
      await open('workshop.xlsx', 'This week');
      await openPlace(page(), 'week/columns');
      await press(/^For the bench \(\d+\)/);
      await says(/rows need a look/);
      await page().evaluate(() => document.querySelector('[data-frame=view]')!.scrollTo(0, 0));
    },
  ],
  [
    'records that were written',
    'records',
    async () => {
      await openSheet(page(), 'Pieces');
      await openPlace(page(), 'qa/records');
      await says(/^Of \d+ records/);
      await press('Add to Inspection records');
      await says(/rows added/);
    },
  ],
  [
    'pieces that are called back',
    'recall',
    async () => {
      await openPlace(page(), 'qa/recall');
      await fill('Lot number', '58/26');
      await press('Find');
      await says('Orders: ');
    },
  ],
  [
    'a sheet of gauges that was added, and a gauge study that is refused',
    'gauges',
    async () => {
      await openPlace(page(), 'qa/gauges');
      await press('Add sheet Gauges');
      await says(/Sheet Gauges added/);
      await press('Study by one person');
    },
  ],
  [
    'the strip unfolded over a cell with a finding',
    'strip',
    async () => {
      await openSheet(page(), 'This week');
      await openPlace(page(), 'week/columns');
      await pane().getByRole('region', { name: 'Selected cell' }).getByRole('button').first().click();
    },
  ],
]);

it('complained about nothing', () => expect(complaints()).toEqual([]));
