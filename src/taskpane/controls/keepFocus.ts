const TABBABLE = ['a[href]', 'button', 'input', 'select', 'textarea', 'summary', '[tabindex]']
  .map(each => `${each}:not([tabindex="-1"], [data-tabster-dummy])`)
  .join(', ');
/** What says what came of it: it can take the keyboard in place of a button in it that has gone. */
const SAYING = '[role=status], [role=alert]';
const VIEW = '[role=tabpanel]';
/** A button that rests while it works comes back; one that does not has gone. */
const REST_MS = 1500;
/** So long after that, a part that looks after itself has not been gone to, but has taken the keyboard: a sheet does so when it is written. */
const TAKEN_MS = 4000;

function isShown(element: HTMLElement): boolean {
  return element.isConnected && element.getClientRects().length > 0 && getComputedStyle(element).visibility !== 'hidden';
}

const isTabbable = (element: HTMLElement) => !element.matches(':disabled') && isShown(element);

/** Where the keyboard was: the element, those round it, and what could be reached then, in order. */
interface Place {
  readonly element: HTMLElement;
  readonly around: readonly HTMLElement[];
  readonly reachable: readonly HTMLElement[];
}

function tabbables(root: HTMLElement, leaveAlone: string): HTMLElement[] {
  return [...root.querySelectorAll<HTMLElement>(TABBABLE)].filter(each => isTabbable(each) && !each.closest(leaveAlone));
}

function placeOf(element: HTMLElement, root: HTMLElement, leaveAlone: string): Place {
  const around: HTMLElement[] = [];
  for (let parent = element.parentElement; parent && parent !== root; parent = parent.parentElement) around.push(parent);
  return { element, around, reachable: tabbables(root, leaveAlone) };
}

/** The tab of the view that is shown now. */
function chosenTab(root: HTMLElement): HTMLElement | undefined {
  return [...root.querySelectorAll<HTMLElement>('[role=tab][aria-selected=true]')].filter(isTabbable).at(-1);
}

/** What takes the keyboard: what says the outcome, else what came in the same place, else the next or the one before in the same view. */
function heirOf({ element, around, reachable }: Place, root: HTMLElement, leaveAlone: string): HTMLElement | undefined {
  if (around.some(each => each.matches(VIEW) && !isShown(each))) return chosenTab(root);
  const stays = around.find(isShown);
  const saying = stays?.closest<HTMLElement>(SAYING);
  if (saying) return saying;
  const now = new Set(tabbables(root, leaveAlone));
  const at = reachable.indexOf(element);
  const after = reachable.slice(at + 1).find(each => now.has(each));
  const before = reachable
    .slice(0, Math.max(at, 0))
    .reverse()
    .find(each => now.has(each));
  const order = [...now];
  const between = order.slice(before ? order.indexOf(before) + 1 : 0, after ? order.indexOf(after) : undefined);
  const view = around.find(each => each.matches(VIEW));
  const isNear = (each: HTMLElement | undefined) => each && (!view || view.contains(each));
  const candidates = [between.find(each => stays?.contains(each)), after, before];
  return candidates.find(isNear) ?? after ?? before;
}

/**
 * Keeps the keyboard's place: where the element that has the focus goes away, is hidden or switched off, the nearest thing that makes sense
 * takes it, so that nobody has to begin at the top of the page. A page that has not the focus, since somebody works in the sheet, does not
 * take it.
 * @param root of what is watched
 * @param leaveAlone selector of parts that look after themselves
 * @returns how to stop that
 */
export function keepFocus(root: HTMLElement, leaveAlone = ':not(*)'): () => void {
  let place: Place | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** When the keyboard was handed on last, while nobody has moved it since. */
  let handedOn = -Infinity;
  const focused = ({ target }: FocusEvent) => {
    clearTimeout(timer);
    const isTaken = target instanceof Element && !!target.closest(leaveAlone) && performance.now() - handedOn < TAKEN_MS;
    if (isTaken && place) return handOn();
    const isOurs = target instanceof HTMLElement && target !== root && root.contains(target) && !target.closest(leaveAlone);
    place = isOurs ? placeOf(target, root, leaveAlone) : undefined;
  };
  // Somebody who clicks where nothing takes the keyboard means it.
  const pointed = () => {
    place = undefined;
    handedOn = -Infinity;
  };
  const pressed = ({ key }: KeyboardEvent) => {
    if (key === 'Tab' || key === 'F6') handedOn = -Infinity;
  };
  const isLost = () =>
    document.hasFocus() && [document.body, root, null, place?.element].includes(document.activeElement as HTMLElement | null);
  const pass = () => {
    if (place && isLost() && !isTabbable(place.element)) handOn();
  };
  const handOn = () => {
    if (!place) return;
    handedOn = performance.now();
    const heir = isTabbable(place.element) ? place.element : heirOf(place, root, leaveAlone);
    if (heir && !heir.matches(TABBABLE)) heir.tabIndex = -1;
    heir?.focus();
  };
  const changed = () => {
    if (!place || !isLost()) return;
    if (isTabbable(place.element)) {
      // It was switched off for a while, and the browser has forgotten it.
      if (document.activeElement !== place.element) place.element.focus();
      return;
    }
    handedOn = performance.now();
    clearTimeout(timer);
    timer = setTimeout(pass, isShown(place.element) ? REST_MS : 0);
  };
  const observer = new MutationObserver(changed);
  observer.observe(root, { subtree: true, childList: true, attributes: true, attributeFilter: ['disabled', 'hidden', 'open'] });
  document.addEventListener('focusin', focused);
  document.addEventListener('pointerdown', pointed, true);
  window.addEventListener('keydown', pressed, true);
  return () => {
    clearTimeout(timer);
    observer.disconnect();
    document.removeEventListener('focusin', focused);
    document.removeEventListener('pointerdown', pointed, true);
    window.removeEventListener('keydown', pressed, true);
  };
}
