import type { Page } from 'playwright-core';

/** Asked at every frame, what goes through the whole pane would keep the page from its work. */
const NOW_AND_THEN_MS = 100;

/** Where the keyboard is: its name as it is read out, whether that is in the pane, and how far from the top of its view. */
export interface Stop {
  readonly name: string;
  readonly isInPane: boolean;
}

interface Watcher {
  last?: Element | undefined;
  look?: string;
  nameOf(element: Element | null): string;
  lookOf(element: Element): string;
}

type Watched = Window & { keyboardWalk: Watcher };

/** Puts into the page what is asked there again and again. */
function watch(): void {
  const nameOf = (element: Element | null): string => {
    if (!element || element === document.body) return '';
    const by = element.getAttribute('aria-labelledby')?.split(' ') ?? [];
    const labels = [...((element as HTMLInputElement).labels ?? [])].map(each => each.textContent);
    const own = element.getAttribute('aria-label') ?? by.map(id => document.getElementById(id)?.textContent ?? '').join(' ');
    return (own || labels.join(' ') || (element as HTMLElement).innerText || element.id || element.tagName).trim().slice(0, 80);
  };
  // Everything about an element, and about what stands round it, that can show that it has the focus.
  const lookOf = (element: Element): string => {
    const { parentElement: parent, nextElementSibling: next, previousElementSibling: previous } = element;
    const round = [element, parent, parent?.parentElement, next, previous].filter(each => each instanceof Element);
    const looks = round.flatMap(each =>
      ['', '::before', '::after'].map(part => {
        const style = getComputedStyle(each, part || undefined);
        const outline = style.outlineStyle === 'none' ? '' : style.outlineWidth + style.outlineColor;
        const borders = [style.borderTopColor, style.borderTopWidth, style.borderBottomColor, style.borderBottomWidth];
        return [outline, ...borders, style.boxShadow, style.transform, style.textDecoration].join(' ');
      }),
    );
    return looks.join();
  };
  (window as unknown as Watched).keyboardWalk ??= { nameOf, lookOf };
}

/** Walks a page by keyboard alone, and notes what somebody who cannot see or point would stumble over. */
export class KeyboardWalk {
  /** Stops at which nothing showed where the keyboard is. */
  readonly unseen: string[] = [];
  /** Stops without a name, and times at which the keyboard was nowhere. */
  readonly lost: string[] = [];

  constructor(private readonly page: Page) {}

  async here(): Promise<Stop> {
    await this.page.evaluate(watch);
    return this.page.evaluate(() => {
      const active = document.activeElement;
      const isInPane = active !== null && active.closest('[data-frame=pane]') !== null;
      return { name: (window as unknown as Watched).keyboardWalk.nameOf(active), isInPane };
    });
  }

  /** Presses a key and looks whether what had the focus looks otherwise without it. */
  async press(key: string): Promise<Stop> {
    await this.page.evaluate(watch);
    await this.page.evaluate(() => {
      const watcher = (window as unknown as Watched).keyboardWalk;
      const active = document.activeElement;
      watcher.last = active && active !== document.body && !active.closest('.sheet') ? active : undefined;
      if (watcher.last) watcher.look = watcher.lookOf(watcher.last);
    });
    await this.page.keyboard.press(key);
    const unseen = await this.page.evaluate(() => {
      const { last, look, lookOf, nameOf } = (window as unknown as Watched).keyboardWalk;
      if (!last?.isConnected || last === document.activeElement) return '';
      return lookOf(last) === look ? nameOf(last) || 'nameless' : '';
    });
    if (unseen) this.unseen.push(unseen);
    return this.here();
  }

  /** Presses Tab, or another key, until something of that name has the focus. */
  async to(name: string | RegExp, key = 'Tab', most = 120): Promise<void> {
    const passed: string[] = [];
    if (key === 'Tab') await this.awaits(name);
    for (let stop = await this.here(); ; stop = await this.press(key)) {
      if (typeof name === 'string' ? stop.name === name : name.test(stop.name)) return;
      if (passed.length > 0 && stop.name === '') this.lost.push(`after ${passed.at(-1)}`);
      passed.push(stop.name);
      if (passed.length > most) throw new Error(`${name} was not reached by ${key}: ${passed.join(' | ')}`);
    }
  }

  /** Waits, as a person does, until the pane shows something of that name: views read the sheet first. Tab finds out where nothing comes. */
  private async awaits(name: string | RegExp): Promise<void> {
    await this.page.evaluate(watch);
    const isShown = ([source, flags, exact]: readonly [string, string, string]) =>
      [...document.querySelectorAll('[data-frame=pane] :is(a, button, input, select, summary, textarea, [tabindex])')].some(
        each => {
          const its = (window as unknown as Watched).keyboardWalk.nameOf(each);
          return each.getClientRects().length > 0 && (source ? new RegExp(source, flags).test(its) : its === exact);
        },
      );
    const wanted = typeof name === 'string' ? (['', '', name] as const) : ([name.source, name.flags, ''] as const);
    await this.page.waitForFunction(isShown, wanted, { timeout: 20_000, polling: NOW_AND_THEN_MS }).catch(() => undefined);
  }

  /** From the sheet into the pane: F6 carries the keyboard from part to part. */
  async intoPane(): Promise<void> {
    for (let part = 0; part < 8; part++) if ((await this.press('F6')).isInPane) return;
    throw new Error('F6 does not lead into the pane.');
  }

  /** Opens a view by its two rows of tabs. */
  async open(tab: string, view: string): Promise<void> {
    await this.intoPane();
    const active = () => this.page.evaluate(() => document.activeElement!.getAttribute('aria-selected'));
    await this.to(tab, 'ArrowRight', 6);
    await this.page.keyboard.press('Enter');
    await this.press('Tab');
    await this.to(view, 'ArrowRight', 6);
    if ((await active()) !== 'true') await this.page.keyboard.press('Enter');
  }

  /** Notes which live regions there are, so that only words that come into one of them, or an alert, count as said. */
  async listen(): Promise<void> {
    await this.page.evaluate(() => {
      for (const region of document.querySelectorAll<HTMLElement>('[role=status], [aria-live]')) region.dataset.heard = 'yes';
    });
  }

  /** Waits until a screen reader would have said it. */
  async hears(words: RegExp): Promise<void> {
    await this.page.waitForFunction(
      ([source, flags]) =>
        [...document.querySelectorAll<HTMLElement>('[data-heard], [role=alert]')].some(
          region => region.getClientRects().length > 0 && new RegExp(source!, flags).test(region.textContent!),
        ),
      [words.source, words.flags],
      { timeout: 60_000, polling: NOW_AND_THEN_MS },
    );
  }

  /** Presses Enter, waits for the words, and notes where the keyboard is nowhere then. */
  async enter(words: RegExp): Promise<void> {
    const { name } = await this.here();
    await this.listen();
    await this.page.keyboard.press('Enter');
    await this.hears(words);
    // What rests while it works is given some time to come back.
    await this.page.waitForTimeout(1800);
    const after = await this.here();
    if (!after.isInPane) this.lost.push(`after pressing ${name}`);
  }
}
