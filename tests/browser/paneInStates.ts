import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { cutOffAt, findings, inEveryLook, lostInContrast, PANE, type Look } from './paneChecks';
import { openFile, openSheet, picture, tryOut, type TryOut } from './tryOut';

export const SAMPLES = join(__dirname, '../../samples');
const bytesOf = (sample: string) => readFileSync(join(SAMPLES, sample));

/** Something that a pane can show: what it is, the name of its pictures, the way to it from the state before. */
export type PaneState = readonly [state: string, name: string, steps: () => Promise<unknown>];

/** What one contrast theme loses, all do: each state is looked at in one, the light and the dark one in turn. */
let contrast: Look['look'] = 'contrast';

/** Asserts that the state shown breaks no rule, loses nothing in a contrast theme, and has nothing cut off at 320 points and at 160. */
async function isClean(page: Page, pane: Locator, name: string): Promise<void> {
  const found = await inEveryLook(
    page,
    PANE,
    async ({ look, colorScheme, isContrast }) => {
      await picture(pane, `state-${name}-${look}.png`);
      return isContrast ? lostInContrast(page) : findings(page, PANE, { colorScheme });
    },
    ({ look, isContrast }) => !isContrast || look === contrast,
  );
  contrast = contrast === 'contrast' ? 'contrast-dark' : 'contrast';
  expect(found).toEqual([]);
  expect([...(await cutOffAt(page, 320)), ...(await cutOffAt(page, 160))]).toEqual([]);
}

/** One try-out page with a sample in it, its pane 320 points wide, for all states of a test file; and what is done in it. */
export function paneInStates(sample: string) {
  let opened: TryOut;
  const page = () => opened.page;
  const pane = () => page().getByRole('complementary', { name: 'Task pane' });
  // Views that are not shown stay, hidden.
  const shown = (locator: Locator) => locator.locator('visible=true').first();

  beforeAll(async () => {
    opened = await tryOut({ width: 960, height: 800 }, bytesOf(sample));
    await pane().evaluate(aside => (aside.style.cssText = 'width: 320px; min-width: 0; flex: none'));
  });
  afterAll(() => opened?.close());

  return {
    page,
    pane,
    complaints: () => opened.complaints,
    press: (name: string | RegExp) => shown(pane().getByRole('button', { name })).click(),
    fill: (label: string | RegExp, value: string) => shown(pane().getByLabel(label)).fill(value),
    says: (words: string | RegExp) => shown(pane().getByText(words)).waitFor(),
    unfold: (part: string) => pane().getByRole('region', { name: part }).locator('summary').click(),
    open: async (name: string, sheet: string) => {
      await openFile(page(), name, bytesOf(name));
      await openSheet(page(), sheet);
    },
    /** One test for each state, in this order. */
    states: (all: readonly PaneState[]) =>
      test.each(all)(
        '%s',
        async (_, name, steps) => {
          await steps();
          await isClean(page(), pane(), name);
        },
        180_000,
      ),
  };
}
