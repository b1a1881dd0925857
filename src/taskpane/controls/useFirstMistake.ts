import { useEffect, useRef, useState, type RefObject } from 'react';

/**
 * Leads the keyboard to what has to be put right: after each call of the function, the first field in the element that holds a mistake
 * takes the focus. A form may be longer than the pane, and the button stands at its end.
 */
export function useFirstMistake<T extends HTMLElement>(): readonly [RefObject<T>, () => void] {
  const form = useRef<T>(null);
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    if (asked > 0) form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [asked]);
  return [form, () => setAsked(count => count + 1)];
}
