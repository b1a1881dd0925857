/** @jest-environment ./tests/quickJsdom.mjs */
import { fireEvent, render, screen } from '@testing-library/react';
import { WriteButton } from '../../../src/taskpane/controls/WriteButton';

const button = () => screen.getByRole('button');

test('a button that was pressed keeps the keyboard while it writes, and writes nothing more until then', () => {
  const write = jest.fn();
  const shown = (isBusy: boolean) => (
    <WriteButton disabled={isBusy} onClick={write}>
      Write
    </WriteButton>
  );
  const { rerender } = render(shown(false));
  button().focus();
  fireEvent.click(button());
  rerender(shown(true));
  // A browser takes the focus from a button that gets the attribute `disabled`; jsdom leaves it there.
  expect([document.activeElement, button().hasAttribute('disabled'), button().getAttribute('aria-disabled')]).toEqual([
    button(),
    false,
    'true',
  ]);
  fireEvent.click(button());
  expect(write).toHaveBeenCalledTimes(1);
  rerender(shown(false));
  fireEvent.click(button());
  expect(write).toHaveBeenCalledTimes(2);
});

test('a double click writes once', () => {
  const write = jest.fn();
  render(<WriteButton onClick={write}>Write</WriteButton>);
  fireEvent.click(button(), { detail: 1 });
  fireEvent.click(button(), { detail: 2 });
  expect(write).toHaveBeenCalledTimes(1);
});
