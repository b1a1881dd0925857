/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { render, screen } from '@testing-library/react';
import type { Gathered } from '../../../src/sheets/cutlist/gatherCuts';
import { makeAgain } from '../../../src/sheets/pieces/scrapPiece';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { WaitingNote } from '../../../src/taskpane/week/WaitingNote';
import { office, planned, week, written } from '../../sheets/pieces/shopOffice';

const shown = (gathered: Gathered) =>
  render(
    <FluentProvider theme={webLightTheme}>
      <WaitingNote gathered={gathered} onLeave={() => {}} />
    </FluentProvider>,
  );

const show = (count: number) => {
  const lines = Array.from({ length: count }, (_, index) => ({ waits: `41/1-${index + 1}` }));
  return shown({ waiting: { lines, problems: [] }, wishes: {} } as unknown as Gathered);
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

test('pieces that are made again are named by their numbers', async () => {
  const workbook = office({ Jobs: week([4, 'Hazel DN 12', 900, 1]) });
  await written(workbook, 'Jobs');
  const book = await pieceBook(workbook);
  await workbook.write(makeAgain(book, book.pieces!.pieces[0]!, 2, '2026-11-29').changes);
  const { gathered } = await planned(workbook, 'Jobs');
  shown(gathered);
  const names = '4-2 (again like 4-1, 2026-11-29); 4-3 (again like 4-1, 2026-11-29)';
  expect(screen.getByText(`2 pieces wait on sheet Pieces: ${names}.`, { exact: false })).toBeTruthy();
});
