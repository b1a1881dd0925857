/** The spreadsheet library looks up suggestions this long after the last key; a little more to be sure. */
const LOOK_UP_MILLISECONDS = 340;
const SUGGESTIONS = 'ul[data-u-comp="sheets-formula-editor"]';
const TAKES_SUGGESTION = new Set(['Enter', 'Tab']);

/**
 * Lets Enter and Tab wait until the suggestions below a formula fit what was typed. Without that the library takes the first of the
 * old suggestions when somebody types on fast, and puts another function in the place of the typed one.
 * @returns how to stop that
 */
export function awaitSuggestions(): () => void {
  let lastInput = -Infinity;
  const typed = () => {
    lastInput = performance.now();
  };
  const pressed = (event: KeyboardEvent) => {
    const wait = lastInput + LOOK_UP_MILLISECONDS - performance.now();
    if (!event.isTrusted || wait <= 0 || !TAKES_SUGGESTION.has(event.key) || !document.querySelector(SUGGESTIONS)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    const { key, code, keyCode, shiftKey, ctrlKey, altKey, metaKey, target } = event;
    const again = new KeyboardEvent('keydown', {
      ...{ key, code, keyCode, which: keyCode, shiftKey, ctrlKey, altKey, metaKey },
      bubbles: true,
      cancelable: true,
      composed: true,
    });
    setTimeout(() => target?.dispatchEvent(again), wait);
  };
  window.addEventListener('input', typed, true);
  window.addEventListener('keydown', pressed, true);
  return () => {
    window.removeEventListener('input', typed, true);
    window.removeEventListener('keydown', pressed, true);
  };
}
