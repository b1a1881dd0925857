/** @jest-environment ./tests/quickJsdom.mjs */
import { render, screen } from '@testing-library/react';
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import type { Gathered } from '../../../src/sheets/cutlist/gatherCuts';
import { WaitingNote } from '../../../src/taskpane/week/WaitingNote';

const show = (count: number) => {
  const lines = Array.from({ length: count }, (_, index) => ({ waits: `41/1-${index + 1}` }));
  const gathered = { waiting: { lines, problems: [] }, wishes: {} } as unknown as Gathered;
  return render(
    <FluentProvider theme={webLightTheme}>
      <WaitingNote gathered={gathered} onLeave={() => {}} />
    </FluentProvider>,
  );
};

test('a few pieces that wait are named at once', () => {
  show(2);
  expect(screen.getByText(/2 pieces wait on sheet Pieces: 41\/1-1; 41\/1-2\./)).toBeTruthy();
  expect(screen.queryByText('Which pieces')).toBeNull();
});

test('many are counted, and their names are folded away', () => {
  const { container } = show(194);
  expect(screen.getByText(/194 pieces wait on sheet Pieces\./)).toBeTruthy();
  const folded = container.querySelector('details')!;
  expect(folded.open).toBe(false);
  expect(folded.textContent).toContain('41/1-194');
});
