import { source } from 'axe-core';
import type * as Axe from 'axe-core';
import type { Page } from 'playwright-core';

/*
 * What the tests of accessibility ask of a page: the rules of axe-core (MPL-2.0) for WCAG 2.0 to 2.2, levels A and AA, with its best
 * practices; that nothing is cut off or has to be scrolled sideways (WCAG 2.2, 1.4.4 and 1.4.10).
 */

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
export const PANE = '[data-frame=pane]';
// Fluent's keyboard helper puts unseen sentinels round groups of tabs; they hand the keyboard on and are never stopped at.
const SENTINELS = '[data-tabster-dummy]';

/** What axe finds in a part of the page, one line a finding: rule, where, what is wrong. */
export async function findings(page: Page, frame = PANE, leftOut: readonly string[] = []): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(
    async ([within, tags, exclude]) => {
      const { axe } = window as unknown as { axe: typeof Axe };
      const context = { include: within, exclude: [...exclude] };
      const { violations } = await axe.run(context, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, html, any, all, none }) => {
          const why = [...any, ...all, ...none].map(({ message }) => message).join('; ');
          return `${id} at ${target.join(' ')}: ${html.slice(0, 160)}: ${why}`;
        }),
      );
    },
    [frame, TAGS, [SENTINELS, ...leftOut]] as const,
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

let colorScheme: 'light' | 'dark' = 'light';

/** The findings of what is shown now, in light and dark. */
export async function foundInBothColours(page: Page, frame = PANE, leftOut: readonly string[] = []): Promise<string[]> {
  const all: string[] = [];
  for (let time = 0; time < 2; time++) {
    await page.emulateMedia({ colorScheme, forcedColors: 'none', reducedMotion: 'reduce' });
    await atRest(page, frame);
    all.push(...(await findings(page, frame, leftOut)).map(finding => `${colorScheme}: ${finding}`));
    // The next one begins with the colours of this one: one change a view.
    if (time === 0) colorScheme = colorScheme === 'light' ? 'dark' : 'light';
  }
  return all;
}

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
      const { overflowX, textOverflow, clipPath, clip } = getComputedStyle(element);
      const isUnseen = clipPath !== 'none' || clip !== 'auto' || element.getClientRects().length === 0;
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
