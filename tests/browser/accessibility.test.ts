import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { source } from 'axe-core';
import type * as Axe from 'axe-core';
import type { Page } from 'playwright-core';
import { tabs } from '../../src/taskpane/app/tabs';
import { openFile, openPlace, openSheet, opensSomething, settled, sidewaysAt320, tryOut, type TryOut } from './tryOut';

/*
 * Every view of the pane against the rules of axe-core (MPL-2.0) for WCAG 2.0 to 2.2, levels A and AA, with its best practices:
 * in an empty workbook, with tables to read, and with something found or written; in light and dark, 320 points wide.
 */

const SAMPLES = join(__dirname, '../../samples');
const PLACES = tabs.flatMap(({ id, views }) => views.map(view => `${id}/${view.id}`));
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const PANE = '[data-frame=pane]';

let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });
const press = (name: string | RegExp) => pane().getByRole('button', { name }).click();

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 860 });
  ({ page } = opened);
  await page.evaluate(source);
  await pane().evaluate(aside => (aside.style.cssText = 'width: 320px; min-width: 0; flex: none'));
});

afterAll(() => opened?.close());

/** What axe finds in the pane, one line a finding: rule, where, what is wrong. */
function findings(): Promise<string[]> {
  return page.evaluate(
    async ([frame, tags]) => {
      const { axe } = window as unknown as { axe: typeof Axe };
      // Fluent's keyboard helper puts unseen sentinels round groups of tabs; they hand the keyboard on and are never stopped at.
      const context = { include: frame, exclude: '[data-tabster-dummy]' };
      const { violations } = await axe.run(context, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, html, any, all, none }) => {
          const why = [...any, ...all, ...none].map(({ message }) => message).join('; ');
          return `${id} at ${target.join(' ')}: ${html.slice(0, 160)}: ${why}`;
        }),
      );
    },
    [PANE, TAGS] as const,
  );
}

/** Waits until nothing fades or moves any more. */
async function atRest(): Promise<void> {
  await page.waitForTimeout(300);
  await page.waitForFunction(
    frame => {
      const moving = document.getAnimations().filter(({ effect, playState }) => {
        const { target } = effect as KeyframeEffect;
        const isEndless = effect?.getComputedTiming().iterations === Infinity;
        return playState === 'running' && !isEndless && target?.closest(frame);
      });
      return moving.length === 0;
    },
    PANE,
    { timeout: 20_000 },
  );
}

let colorScheme: 'light' | 'dark' = 'light';

/** The findings of what is shown now, in light and dark. */
async function found(): Promise<string[]> {
  const all: string[] = [];
  for (let time = 0; time < 2; time++) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await atRest();
    all.push(...(await findings()).map(finding => `${colorScheme}: ${finding}`));
    // The next one begins with the colours of this one: one change a view.
    if (time === 0) colorScheme = colorScheme === 'light' ? 'dark' : 'light';
  }
  return all;
}

const open = async (name: string, sheet: string) => {
  await openFile(page, name, readFileSync(join(SAMPLES, name)));
  await openSheet(page, sheet);
};

test('axe sees what is wrong: a button without a name, and grey on grey', async () => {
  await page.evaluate(frame => {
    const wrong = document.createElement('div');
    wrong.id = 'wrong';
    wrong.innerHTML = '<button></button><p style="color: #aaa; background: #bbb">Not to be read</p>';
    document.querySelector(frame)!.append(wrong);
  }, PANE);
  const rules = (await findings()).map(finding => finding.split(' ')[0]);
  await page.evaluate(() => document.querySelector('#wrong')!.remove());
  expect(rules).toEqual(expect.arrayContaining(['button-name', 'color-contrast']));
});

describe('in an empty workbook', () => {
  beforeAll(async () => {
    await page.getByLabel('Sample').selectOption('Empty workbook');
    await opensSomething(page);
    await settled(page);
  });

  test.each(PLACES)('%s', async place => {
    await openPlace(page, place);
    await atRest();
    // Both colour schemes are looked at below, where there is more to see.
    expect(await findings()).toEqual([]);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
  });
});

describe('with tables', () => {
  beforeAll(() => open('catalogue.xlsx', 'Jobs'));

  test.each(PLACES)('%s', async place => {
    await openPlace(page, place);
    await settled(page);
    await page.waitForTimeout(400);
    expect(await found()).toEqual([]);
    expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
  });
});

/** Views that are not shown stay, hidden. */
const fill = (label: string | RegExp, value: string) => pane().getByLabel(label).locator('visible=true').first().fill(value);
const says = (words: string | RegExp) => pane().getByText(words).locator('visible=true').first().waitFor({ timeout: 20_000 });
const isClean = async () => {
  expect(await found()).toEqual([]);
  expect(await sidewaysAt320(page)).toBeLessThanOrEqual(0);
};

describe('with something found, written or refused', () => {
  beforeAll(() => open('catalogue.xlsx', 'Jobs'));

  it.each<readonly [state: string, steps: () => Promise<void>]>([
    [
      'parts that were found, one unfolded',
      async () => {
        await openPlace(page, 'parts/search');
        await pane().getByRole('searchbox').fill('larch dn 12 hose');
        await press('Larch DN 12');
        await says('Insert name');
      },
    ],
    [
      'a thread that was identified',
      async () => {
        await openPlace(page, 'parts/identify');
        const thread = pane().getByRole('region', { name: 'Thread' });
        await thread.getByLabel(/diameter \(mm\)$/).fill('20.9');
        await thread.getByLabel(/^Pitch \(mm\)/).fill('1.814');
        await thread.getByRole('list', { name: 'Threads it may be' }).waitFor({ timeout: 20_000 });
      },
    ],
    [
      'findings of the catalogue',
      async () => {
        await openPlace(page, 'parts/checks');
        await press('Check the catalogue');
        await says(/findings? in 48 hoses|Nothing to correct/);
      },
    ],
    [
      'a quote that is refused',
      async () => {
        await openPlace(page, 'quote/quote');
        await press('Write the quote as a new sheet');
        await says(/Margin is blank/);
      },
    ],
    [
      'a quote that was written, and its paper',
      async () => {
        await fill(/^Margin/, '40 %');
        await press('Write the quote as a new sheet');
        await pane().getByRole('button', { name: 'Quote', exact: true }).waitFor({ timeout: 20_000 });
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
      async () => {
        await openSheet(page, 'Jobs');
        await openPlace(page, 'quote/to-buy');
        await press('Write the purchase list as a new sheet');
        await pane().getByRole('button', { name: 'Purchase list', exact: true }).waitFor({ timeout: 20_000 });
      },
    ],
    [
      'a rise of prices, compared',
      async () => {
        await openPlace(page, 'quote/what-if');
        await fill('All (%)', '5');
        await press('Write the comparison as new sheets');
        await pane().getByRole('button', { name: 'What-if', exact: true }).waitFor({ timeout: 20_000 });
      },
    ],
    [
      'cuts that were planned',
      async () => {
        await openSheet(page, 'Jobs');
        await openPlace(page, 'week/cut-list');
        await fill(/^Kerf/, '3');
        await fill(/^Squaring/, '25');
        await fill(/^Keep from/, '500');
        await press('Plan the cuts');
        await pane()
          .getByRole('img', { name: /to scale/ })
          .first()
          .waitFor({ timeout: 60_000 });
      },
    ],
    [
      'crimps that were analysed, with limits and machine unfolded',
      async () => {
        await open('measurement-book.xlsx', 'Week 40');
        await openPlace(page, 'qa/analysis');
        await says(/All combinations crimp/);
        await press('Limits and machine');
      },
    ],
  ])(
    '%s',
    async (_, steps) => {
      await steps();
      await isClean();
    },
    120_000,
  );
});

it('complained about nothing', () => expect(opened.complaints).toEqual([]));
