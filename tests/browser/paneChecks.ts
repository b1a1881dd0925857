import { source } from 'axe-core';
import type * as Axe from 'axe-core';
import type { Page } from 'playwright-core';

/*
 * What the tests of accessibility ask of a page: the rules of axe-core (MPL-2.0) for WCAG 2.0 to 2.2, levels A and AA, with its best
 * practices; that nothing is cut off or has to be scrolled sideways (WCAG 2.2, 1.4.4 and 1.4.10).
 */

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
export const PANE = '[data-frame=pane]';
/** Those of the rules that ask for colours: the only ones for which the second colour scheme makes a difference. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];
// Fluent's keyboard helper puts unseen sentinels round groups of tabs; they hand the keyboard on and are never stopped at.
const SENTINELS = '[data-tabster-dummy]';

/** What axe finds in a part of the page, one line a finding: rule, where, what is wrong; in dark by the rules of colours only. */
export async function findings(
  page: Page,
  frame = PANE,
  { colorScheme = 'light', leftOut = [] }: { colorScheme?: 'light' | 'dark'; leftOut?: readonly string[] } = {},
): Promise<string[]> {
  const runOnly: Axe.RunOnly = colorScheme === 'light' ? { type: 'tag', values: TAGS } : { type: 'rule', values: COLOUR_RULES };
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(
    async ([within, rules, exclude]) => {
      const { axe } = window as unknown as { axe: typeof Axe };
      const named = [...document.querySelectorAll(`${within} [id]`)].filter(each => !each.closest(exclude.join()));
      const ids = named.map(({ id }) => id);
      const twice = ids.filter(id => document.querySelectorAll(`#${CSS.escape(id)}`).length > 1).map(id => `id ${id} twice`);
      // Views that are not shown stay, hidden. axe would go through their thousands of elements only to leave them out.
      const places = [...document.querySelectorAll('[role=tabpanel][hidden]')].map(view => {
        const place = document.createComment('');
        view.replaceWith(place);
        return { view, place };
      });
      try {
        const context = { include: within, exclude: [...exclude] };
        const { violations } = await axe.run(context, { runOnly: rules, resultTypes: ['violations'] });
        const found = violations.flatMap(({ id, nodes }) =>
          nodes.map(({ target, html, any, all, none }) => {
            const why = [...any, ...all, ...none].map(({ message }) => message).join('; ');
            return `${id} at ${target.join(' ')}: ${html.slice(0, 160)}: ${why}`;
          }),
        );
        return [...twice, ...found];
      } finally {
        for (const { view, place } of places) place.replaceWith(view);
      }
    },
    [frame, runOnly, [SENTINELS, ...leftOut]] as const,
  );
}

/** Waits until nothing fades or moves any more. */
export async function atRest(page: Page, frame = PANE): Promise<void> {
  await page.waitForTimeout(200);
  await page.waitForFunction(
    within => {
      const moving = document.getAnimations().filter(({ effect, playState }) => {
        const { target } = effect as KeyframeEffect;
        const isEndless = effect?.getComputedTiming().iterations === Infinity;
        return playState === 'running' && !isEndless && target?.closest(within);
      });
      return moving.length === 0;
    },
    frame,
    { timeout: 20_000 },
  );
}

/** How a page looks: two colour schemes, and a contrast theme in each. Contrast themes differ in their colours: what one loses, all do. */
export interface Look {
  readonly look: 'light' | 'dark' | 'contrast-dark' | 'contrast';
  readonly colorScheme: 'light' | 'dark';
  readonly isContrast: boolean;
}

let looks: readonly Look[] = [
  { look: 'light', colorScheme: 'light', isContrast: false },
  { look: 'dark', colorScheme: 'dark', isContrast: false },
  { look: 'contrast-dark', colorScheme: 'dark', isContrast: true },
  { look: 'contrast', colorScheme: 'light', isContrast: true },
];

/** What a check finds in each look of what is shown now, named by the look. */
export async function inEveryLook(
  page: Page,
  frame: string,
  check: (look: Look) => Promise<readonly string[]>,
  asked: (look: Look) => boolean = () => true,
): Promise<string[]> {
  const all: string[] = [];
  for (const look of looks.filter(asked)) {
    await page.emulateMedia({
      colorScheme: look.colorScheme,
      forcedColors: look.isContrast ? 'active' : 'none',
      reducedMotion: 'reduce',
    });
    await atRest(page, frame);
    all.push(...(await check(look)).map(found => `${look.look}: ${found}`));
  }
  // What is looked at next begins with the look of this one: one change less.
  looks = [...looks].reverse();
  return all;
}

/** The findings of what is shown now, in light and dark. */
export const foundInBothColours = (page: Page): Promise<string[]> =>
  inEveryLook(
    page,
    PANE,
    ({ colorScheme }) => findings(page, PANE, { colorScheme }),
    ({ isContrast }) => !isContrast,
  );

/**
 * What is cut off, or makes the pane scroll sideways, where the pane is so many points wide: 320, or 160, which is what a pane of 320 points
 * shows at 200 %. Tables that scroll by themselves may; the strip's one line ends in dots, and unfolds.
 */
export function cutOffAt(page: Page, width: number): Promise<string[]> {
  return page.evaluate(points => {
    const pane = document.querySelector<HTMLElement>('[data-frame=pane]')!;
    const before = pane.style.width;
    pane.style.width = `${points}px`;
    const wrong = [pane, ...pane.querySelectorAll<HTMLElement>('[data-frame]')]
      .filter(frame => frame.scrollWidth > frame.clientWidth)
      .map(frame => `${frame.dataset.frame} scrolls ${frame.scrollWidth - frame.clientWidth} sideways at ${points}`);
    const edge = pane.getBoundingClientRect().right;
    for (const element of pane.querySelectorAll<HTMLElement>('*')) {
      // Views that are not shown stay, hidden.
      if (element.getClientRects().length === 0) continue;
      const { overflowX, textOverflow, clipPath, clip } = getComputedStyle(element);
      const isUnseen = clipPath !== 'none' || clip !== 'auto';
      if (isUnseen || element.matches('input, textarea, select, svg, svg *')) continue;
      const { left, right } = element.getBoundingClientRect();
      const scroller = element.closest('[data-scrolls]');
      // Its cross is there only while it has the keyboard.
      if (element.closest('.fui-SearchBox')) continue;
      const isClipped =
        /hidden|clip/.test(overflowX) && textOverflow !== 'ellipsis' && element.scrollWidth > element.clientWidth + 1;
      const isBeyond = right > edge + 1 && right > left && !scroller;
      if (isClipped || isBeyond) {
        wrong.push(
          `${isClipped ? 'clipped' : 'beyond the edge'} at ${points}: <${element.tagName.toLowerCase()}> ${element.textContent!.slice(0, 60)}`,
        );
      }
    }
    pane.style.width = before;
    return wrong.slice(0, 8);
  }, width);
}

/** What a contrast theme would lose: parts of drawings in other colours than the system's, chosen tabs that only a colour tells. */
export function lostInContrast(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const pane = document.querySelector<HTMLElement>('[data-frame=pane]')!;
    const probe = document.body.appendChild(document.createElement('span'));
    probe.style.forcedColorAdjust = 'none';
    const system = ['Canvas', 'CanvasText', 'ButtonFace', 'ButtonText', 'GrayText', 'Highlight', 'HighlightText', 'LinkText'].map(
      name => {
        probe.style.color = name;
        return getComputedStyle(probe).color;
      },
    );
    probe.remove();
    const isKept = (paint: string) => /^(none|url\(|transparent|rgba\(0, 0, 0, 0\))/.test(paint) || system.includes(paint);
    const drawn = [...pane.querySelectorAll('svg :is(path, rect, circle, line, text, polygon)')].filter(
      each => each.getClientRects().length > 0 && !each.closest('clipPath, mask'),
    );
    const wrong = drawn.flatMap(each => {
      const { fill, stroke } = getComputedStyle(each);
      const picture = each.closest('[aria-label]')?.getAttribute('aria-label')?.slice(0, 40);
      return isKept(fill) && isKept(stroke) ? [] : [`<${each.tagName}> of ${picture}: fill ${fill}, stroke ${stroke}`];
    });
    for (const row of pane.querySelectorAll('[role=tablist]')) {
      const weightOf = (selector: string) => {
        const tab = row.querySelector(selector);
        return (
          tab &&
          Math.max(
            ...[tab, ...tab.querySelectorAll('*')]
              .map(each => getComputedStyle(each))
              .filter(({ visibility }) => visibility === 'visible')
              .map(({ fontWeight }) => Number(fontWeight)),
          )
        );
      };
      const [chosen, other] = [weightOf('[aria-selected=true]'), weightOf('[aria-selected=false]')];
      if (chosen !== null && other !== null && chosen <= other) wrong.push(`chosen tab of ${row.getAttribute('aria-label')}`);
    }
    return [...new Set(wrong)].slice(0, 8);
  });
}

/** What of some parts of the page is beyond its edge or cut off, at its width of now; the title, which ends in dots, has a tip with all of it. */
export function beyondPage(page: Page, parts: string): Promise<string[]> {
  return page.evaluate(selector => {
    const wrong: string[] = [];
    const all = [...document.querySelectorAll<HTMLElement>(selector)].flatMap(part => [
      part,
      ...part.querySelectorAll<HTMLElement>('*'),
    ]);
    for (const each of all) {
      const { overflowX, textOverflow, clipPath } = getComputedStyle(each);
      if (clipPath !== 'none' || each.getClientRects().length === 0 || each.matches('select, select *')) continue;
      const isClipped = /hidden|clip/.test(overflowX) && textOverflow !== 'ellipsis' && each.scrollWidth > each.clientWidth + 1;
      if (isClipped || each.getBoundingClientRect().right > innerWidth + 1) wrong.push(each.outerHTML.slice(0, 160));
    }
    if (document.documentElement.scrollWidth > innerWidth) wrong.push('the page scrolls sideways');
    return wrong;
  }, parts);
}
