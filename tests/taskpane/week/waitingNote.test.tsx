/** @jest-environment ./tests/quickJsdom.mjs */
import { FluentProvider, webLightTheme } from '@fluentui/react-components';
import { render, screen } from '@testing-library/react';
import { makeAgain } from '../../../src/sheets/pieces/scrapPiece';
import { pieceBook } from '../../../src/sheets/pieces/pieceBook';
import { WaitingNote } from '../../../src/taskpane/week/WaitingNote';
import { office, planned, week, written } from '../../sheets/pieces/shopOffice';

test('pieces that are made again are named by their numbers', async () => {
  const workbook = office({ Jobs: week([4, 'Hazel DN 12', 900, 1]) });
  await written(workbook, 'Jobs');
  const book = await pieceBook(workbook);
  await workbook.write(makeAgain(book, book.pieces!.pieces[0]!, 2, '2026-11-29').changes);
  const { gathered } = await planned(workbook, 'Jobs');
  render(
    <FluentProvider theme={webLightTheme}>
      <WaitingNote gathered={gathered} onLeave={() => {}} />
    </FluentProvider>,
  );
  const names = '4-2 (again like 4-1, 2026-11-29); 4-3 (again like 4-1, 2026-11-29)';
  expect(screen.getByText(`2 pieces wait on sheet Pieces: ${names}.`, { exact: false })).toBeTruthy();
});
