/** Parts of the page in the order they stand in, with what takes the keyboard there: the first of these that is found. */
const REGIONS: readonly (readonly [region: string, takers: readonly string[]])[] = [
  ['.top', ['button:enabled', 'select:enabled']],
  ['.kept', ['button:enabled']],
  ['.problem', ['button:enabled']],
  ['.tour', ['button:enabled']],
  // The spreadsheet library types through an editor that is always there; it has this id in 0.25.1.
  ['.sheet', ['#__editor___INTERNAL_EDITOR__DOCS_NORMAL']],
  ['.dock', ['[role=tab][aria-selected=true]', 'button:enabled']],
];

/** Fluent UI marks with it what shows that it has the focus. */
const FOCUS_SHOWN = 'data-fui-focus-visible';

function taker(region: Element, takers: readonly string[]): HTMLElement | undefined {
  for (const selector of takers) {
    const found = region.querySelector<HTMLElement>(selector);
    // On a narrow page the sheet is hidden while the pane covers it.
    if (found && getComputedStyle(found).visibility !== 'hidden') return found;
  }
  return undefined;
}

/** The pane shows its frame after Tab only: it is told that this was the keyboard, too. */
function lead(element: HTMLElement): void {
  element.focus();
  element.setAttribute(FOCUS_SHOWN, '');
  element.addEventListener('blur', () => element.removeAttribute(FOCUS_SHOWN), { once: true });
}

/**
 * F6 and Shift+F6 carry the keyboard from one part of the page to the next, as in Excel: the sheet keeps Tab for itself, so there is no other
 * way out of it.
 * @returns how to stop that
 */
export function regionKeys(): () => void {
  const pressed = (event: KeyboardEvent) => {
    if (event.key !== 'F6' || event.altKey || event.ctrlKey || event.metaKey) return;
    const regions = REGIONS.flatMap(([selector, takers]) => {
      const region = document.querySelector(selector);
      const element = region && taker(region, takers);
      return region && element ? [{ region, element }] : [];
    });
    if (regions.length === 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const here = regions.findIndex(({ region }) => region.contains(document.activeElement));
    const step = event.shiftKey ? regions.length - 1 : 1;
    lead(regions[(Math.max(here, 0) + step) % regions.length]!.element);
  };
  window.addEventListener('keydown', pressed, true);
  return () => window.removeEventListener('keydown', pressed, true);
}
