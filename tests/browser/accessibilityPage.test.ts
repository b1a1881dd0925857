import type { Page } from 'playwright-core';
import { workshopFile } from '../preview/workshopFile';
import { beyondPage, findings, inEveryLook } from './paneChecks';
import { keptByBrowser, openFile, openPage, picture, settled, tryOut, type TryOut, typeInA2 } from './tryOut';

/*
 * The try-out page round sheet and pane, in each of its states: the rules of axe-core in light and dark, and nothing cut off or beyond the
 * edge on a page of 640 points, which is what a page of 1280 shows at 200 % (WCAG 2.2, 1.4.4 and 1.4.10). A picture of each state is left in
 * artifacts/. The grid is left out: it is drawn on a canvas by a library of its own (Univer), with whose toolbar and menus nothing can be
 * done here; the status line says what the selected cell holds. The pane is looked at in accessibility.test.ts and accessibilityStates.test.ts.
 */

const LOOKED_AT_ELSEWHERE = ['.sheet', '.univer-popup', '[data-frame=pane]'];
const WIDE = { width: 1280, height: 860 };
const AT_200_PER_CENT = { width: 640, height: 430 };

let opened: TryOut;
let page: Page;

const press = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' }).click();

beforeAll(async () => {
  opened = await tryOut(WIDE);
  ({ page } = opened);
  // The browser asks before a page with unsaved changes is left; here it is left all the same.
  page.on('dialog', question => void question.accept());
  await openFile(page, 'jobs.xlsx', await workshopFile());
});

afterAll(() => opened?.close());

type State = readonly [state: string, name: string, part: string, steps: () => Promise<unknown>];

const STATES: readonly State[] = [
  ['its buttons, and the status line over a cell that is right', 'plain', '.page', () => page.getByLabel('Sample').waitFor()],
  [
    'an error told in the status line',
    'error',
    '.page',
    async () => {
      await typeInA2(page, '=HOSE.CUTLENGTH("wide",1,1)');
      await page.keyboard.press('ArrowUp');
      await page.locator('.status.wrong').waitFor();
    },
  ],
  [
    'the choice of a tour',
    'tours',
    '.page',
    async () => {
      await press('Take the tour');
      await page.getByText('Whose work do you want to see?').waitFor();
    },
  ],
  [
    'the question about unsaved changes',
    'unsaved',
    'dialog.unsaved',
    async () => {
      await press(/^Estimator/);
      await page.locator('dialog.unsaved').waitFor();
    },
  ],
  [
    'a step of a tour',
    'tour',
    '.page',
    async () => {
      await press('Go on without saving');
      await page.getByText('Estimator, step 1 of 5').waitFor();
      await settled(page);
    },
  ],
  [
    'a file that cannot be opened',
    'problem',
    '.page',
    async () => {
      const buffer = Buffer.from('no workbook');
      await page.setInputFiles('input[type=file]', { name: 'broken.xlsx', mimeType: 'application/octet-stream', buffer });
      await page.locator('.problem', { hasText: 'broken.xlsx' }).waitFor();
    },
  ],
  [
    'a workbook that was left behind',
    'left',
    '.page',
    async () => {
      await openFile(page, 'jobs.xlsx', await workshopFile());
      await typeInA2(page, '20.5');
      await keptByBrowser(page);
      await openPage(page, opened.url);
      await page.getByRole('region', { name: 'Unsaved workbook' }).waitFor();
    },
  ],
];

test.each(STATES)('%s', async (_, name, part, steps) => {
  await steps();
  const found = await inEveryLook(page, part, async ({ look, colorScheme, isContrast }) => {
    await picture(page, `page-${name}-${look}.png`);
    // A contrast theme sets its own colours: the rules of axe-core say nothing of it that they do not say of the others.
    return isContrast ? [] : findings(page, part, { colorScheme, leftOut: LOOKED_AT_ELSEWHERE });
  });
  expect(found).toEqual([]);
  await page.setViewportSize(AT_200_PER_CENT);
  await picture(page, `page-${name}-200.png`);
  const beyond = await beyondPage(page, '.top, .tour, .kept, .problem, .status, .unsaved');
  await page.setViewportSize(WIDE);
  expect(beyond).toEqual([]);
});

test('what is beyond the edge of the page would be found', async () => {
  await page.evaluate(() => {
    const wrong = document.createElement('p');
    wrong.id = 'wrong';
    wrong.style.cssText = 'width: 2000px; flex: none';
    wrong.textContent = 'Much too wide';
    document.querySelector('.top')!.append(wrong);
  });
  const beyond = await beyondPage(page, '.top');
  await page.evaluate(() => document.querySelector('#wrong')!.remove());
  expect(beyond.join()).toContain('Much too wide');
});

it('complained about nothing', () => expect(opened.complaints).toEqual([]));
