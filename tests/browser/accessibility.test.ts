import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { tabs } from '../../src/taskpane/app/tabs';
import { atRest, cutOffAt, findings, foundInBothColours, PANE } from './paneChecks';
import { openPlace, openSheet, opensSomething, settled, tryOut, type TryOut } from './tryOut';

/*
 * Every view of the pane against the rules of axe-core: in an empty workbook and with tables to read, in light and dark, 320 points wide.
 * What the views look like once something is found or written: accessibilityStates.test.ts.
 */

const SAMPLE = join(__dirname, '../../samples/catalogue.xlsx');
const PLACES = tabs.flatMap(({ id, views }) => views.map(view => `${id}/${view.id}`));

let opened: TryOut;
let page: Page;

const pane = () => page.getByRole('complementary', { name: 'Task pane' });

beforeAll(async () => {
  opened = await tryOut({ width: 1280, height: 860 }, readFileSync(SAMPLE));
  ({ page } = opened);
  await pane().evaluate(aside => (aside.style.cssText = 'width: 320px; min-width: 0; flex: none'));
});

afterAll(() => opened?.close());

test('what is wrong is seen: a button without a name, grey on grey, an id that is there twice, a line too wide for 160 points', async () => {
  await page.evaluate(frame => {
    const wrong = document.createElement('div');
    wrong.id = 'wrong';
    wrong.innerHTML =
      '<button></button><i id="wrong"></i><p style="color: #aaa; background: #bbb; width: 250px">Not to be read</p>';
    document.querySelector(frame)!.append(wrong);
  }, PANE);
  const rules = (await findings(page)).map(finding => finding.split(' ')[0]);
  const [at320, at160] = [await cutOffAt(page, 320), await cutOffAt(page, 160)];
  await page.evaluate(() => document.querySelector('#wrong')!.remove());
  expect(rules).toEqual(expect.arrayContaining(['button-name', 'color-contrast', 'id']));
  expect(at320).toEqual([]);
  expect(at160.join()).toContain('Not to be read');
});

describe('with tables', () => {
  beforeAll(() => openSheet(page, 'Jobs'));

  test.each(PLACES)('%s', async place => {
    await openPlace(page, place);
    await settled(page);
    await page.waitForTimeout(400);
    expect(await foundInBothColours(page)).toEqual([]);
    expect([...(await cutOffAt(page, 320)), ...(await cutOffAt(page, 160))]).toEqual([]);
  });
});

describe('in an empty workbook', () => {
  beforeAll(async () => {
    await page.getByLabel('Sample').selectOption('Empty workbook');
    await opensSomething(page);
    await settled(page);
  });

  test.each(PLACES)('%s', async place => {
    await openPlace(page, place);
    await atRest(page);
    // Both colour schemes are looked at above, where there is more to see.
    expect(await findings(page)).toEqual([]);
    expect([...(await cutOffAt(page, 320)), ...(await cutOffAt(page, 160))]).toEqual([]);
  });
});

it('complained about nothing', () => expect(opened.complaints).toEqual([]));
