import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { cutOffAt, foundInBothColours, lostInContrast, atRest } from './paneChecks';
import { ARTIFACTS, openFile, openPlace, openSheet, settled, tryOut, type TryOut } from './tryOut';

/*
 * What the views look like once something was found, planned, written or refused: the rules of axe-core in light and dark, nothing cut off at
 * 320 points, nothing lost in a contrast theme, light or dark. A picture of each state is left in artifacts/.
 */

const SAMPLES = join(__dirname, '../../samples');
const SLOW = { timeout: 60_000 };

let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });
/** Views that are not shown stay, hidden. */
const button = (name: string | RegExp) => pane().getByRole('button', { name }).locator('visible=true').first();
const press = (name: string | RegExp) => button(name).click();
const fill = (label: string | RegExp, value: string) => pane().getByLabel(label).locator('visible=true').first().fill(value);
const says = (words: string | RegExp) => pane().getByText(words).locator('visible=true').first().waitFor(SLOW);
const unfold = (part: string) => pane().getByRole('region', { name: part }).locator('summary').click();
const narrow = () => pane().evaluate(aside => (aside.style.cssText = 'width: 320px; min-width: 0; flex: none'));

const open = async (name: string, sheet: string) => {
  await openFile(page, name, readFileSync(join(SAMPLES, name)));
  await openSheet(page, sheet);
};

const PLAIN = { colorScheme: 'light', forcedColors: 'none' } as const;

/** The contrast themes differ in their colours; what can be lost in one is lost in all of a scheme. */
async function inContrast(): Promise<string[]> {
  const lost: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, forcedColors: 'active', reducedMotion: 'reduce' });
    await atRest(page);
    lost.push(...(await lostInContrast(page)).map(each => `${colorScheme}: ${each}`));
  }
  return lost;
}

async function isClean(name: string): Promise<void> {
  const picture = (look: string) => pane().screenshot({ path: join(ARTIFACTS, `state-${name}-${look}.png`) });
  expect(await foundInBothColours(page)).toEqual([]);
  expect(await inContrast()).toEqual([]);
  await picture('contrast');
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ ...PLAIN, colorScheme });
    await atRest(page);
    await picture(colorScheme);
  }
  expect(await cutOffAt(page, 320)).toEqual([]);
}

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 1500 });
  ({ page } = opened);
  await narrow();
});

afterAll(() => opened?.close());

type State = readonly [state: string, name: string, steps: () => Promise<unknown>];

const states = (all: readonly State[]) =>
  it.each(all)(
    '%s',
    async (_, name, steps) => {
      await steps();
      await isClean(name);
    },
    180_000,
  );

describe('the pane with the workshop’s catalogue', () => {
  beforeAll(() => open('catalogue.xlsx', 'Jobs'));

  states([
    [
      'parts that were found, one unfolded, and a question before a cell is written over',
      'parts',
      async () => {
        await openPlace(page, 'parts/search');
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
        await openPlace(page, 'parts/identify');
        const thread = pane().getByRole('region', { name: 'Thread' });
        await thread.getByLabel(/diameter \(mm\)$/).fill('20.9');
        await thread.getByLabel(/^Pitch \(mm\)/).fill('1.814');
        await thread.getByRole('list', { name: 'Threads it may be' }).waitFor(SLOW);
      },
    ],
    [
      'files that were read, with a problem, and differences shown',
      'load',
      async () => {
        await openPlace(page, 'parts/load');
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
        await openPlace(page, 'parts/checks');
        await press('Check the catalogue');
        await says(/findings? in 48 hoses|Nothing to correct/);
      },
    ],
    [
      'a duty whose form is refused',
      'duty-refused',
      async () => {
        await openPlace(page, 'quote/duty');
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
        await openPlace(page, 'quote/quote');
        await press('Write the quote as a new sheet');
        await says(/Margin is blank/);
      },
    ],
    [
      'a quote that was written, and its paper',
      'quote',
      async () => {
        await fill(/^Margin/, '40 %');
        await press('Write the quote as a new sheet');
        await pane().getByRole('button', { name: 'Quote', exact: true }).waitFor(SLOW);
        await settled(page);
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
        await openSheet(page, 'Jobs');
        await openPlace(page, 'quote/to-buy');
        await press('Write the purchase list as a new sheet');
        await pane().getByRole('button', { name: 'Purchase list', exact: true }).waitFor(SLOW);
      },
    ],
    [
      'a rise of prices, compared',
      'what-if',
      async () => {
        await openPlace(page, 'quote/what-if');
        await fill('All (%)', '5');
        await press('Write the comparison as new sheets');
        await pane().getByRole('button', { name: 'What-if', exact: true }).waitFor(SLOW);
      },
    ],
    [
      'an order of work',
      'order',
      async () => {
        await openSheet(page, 'Week');
        await openPlace(page, 'week/order');
        await says(/set-up|change/i);
      },
    ],
    [
      'cuts that were planned and written',
      'cuts',
      async () => {
        await openPlace(page, 'week/cut-list');
        await fill(/^Kerf/, '3');
        await fill(/^Squaring/, '25');
        await fill(/^Keep from/, '500');
        await press('Plan the cuts');
        await pane()
          .getByRole('img', { name: /to scale/ })
          .first()
          .waitFor(SLOW);
        await press('Write cut list, rack and pieces');
        await says(/^Written:/);
        await settled(page);
      },
    ],
    [
      'a piece at the bench',
      'piece',
      async () => {
        await openPlace(page, 'bench/entry');
        await fill('Piece or tag', 'W41-01-1');
        await press('Find');
        await says(/^Piece W41-01-1: /);
      },
    ],
    [
      'a reading far from the target, asked about',
      'verdict',
      async () => {
        await pane().getByLabel('Reading 1').waitFor(SLOW);
        await pane().getByLabel('Reading 1').focus();
        for (let reading = 0; reading < 4; reading++) {
          await page.keyboard.type('28.1');
          await page.keyboard.press('Enter');
          await page.waitForTimeout(100);
        }
      },
    ],
  ]);
});

describe('the pane with readings and records', () => {
  states([
    [
      'columns that were added, with rows that need a look',
      'columns',
      async () => {
        await open('job-sheet.xlsx', 'Bench record');
        await openPlace(page, 'week/columns');
        await press(/^For QA \(\d+\)/);
        await says(/rows? needs? a look|Nothing to look at/);
        await page.evaluate(() => document.querySelector('[data-frame=view]')!.scrollTo(0, 0));
      },
    ],
    [
      'crimps that were analysed, with limits and machine unfolded',
      'analysis',
      async () => {
        await open('measurement-book.xlsx', 'Week 40');
        await openPlace(page, 'qa/analysis');
        await says(/All combinations crimp/);
        await press('Limits and machine');
        await pane().locator('svg [aria-label="dot"], [role=img] svg').first().waitFor(SLOW);
      },
    ],
    [
      'records that were written',
      'records',
      async () => {
        await open('workshop.xlsx', 'Pieces');
        await openPlace(page, 'qa/records');
        await says(/^Of \d+ records/);
        await press('Add to Inspection records');
        await says(/rows added/);
      },
    ],
    [
      'pieces that are called back',
      'recall',
      async () => {
        await openPlace(page, 'qa/recall');
        await fill('Lot number', '58/26');
        await press('Find');
        await says('Orders: ');
      },
    ],
    [
      'a sheet of gauges that was added, and a gauge study that is refused',
      'gauges',
      async () => {
        await openPlace(page, 'qa/gauges');
        await press('Add sheet Gauges');
        await says(/Sheet Gauges added/);
        await press('Study by one person');
      },
    ],
    [
      'the strip unfolded over a cell with a finding',
      'strip',
      async () => {
        await openSheet(page, 'This week');
        await openPlace(page, 'week/columns');
        await pane().getByRole('region', { name: 'Selected cell' }).getByRole('button').first().click();
      },
    ],
  ]);
});

it('complained about nothing', () => expect(opened.complaints).toEqual([]));
