import { useEffect, useRef, type RefObject } from 'react';

/**
 * Keeps the keyboard's place: where what had the focus has gone away with a change of state, the element takes it (it needs a tabIndex).
 * A pane that has not the focus, since somebody works in the sheet, does not take it.
 */
export function useFocusWhenLost<T extends HTMLElement>(state: unknown): RefObject<T> {
  const element = useRef<T>(null);
  const known = useRef(state);
  useEffect(() => {
    if (known.current === state) return;
    known.current = state;
    if (document.hasFocus() && document.activeElement === document.body) element.current?.focus();
  }, [state]);
  return element;
}
