import type { Change, Workbook } from '../../workbook/workbook';
import type { CatalogueRead } from '../jobs/jobTablesOf';
import type { Writing } from '../print/writing';
import { changePiece, trace } from './changePiece';
import { jobsOfPieces } from './jobsOfPieces';
import { jobStatusChanges } from './jobStatusChanges';
import { assemblyOf, type Piece } from './piece';
import { statusOfPiece } from './pieceStatus';
import { pieceStatusChanges } from './pieceStatusChanges';
import type { PieceBook } from './pieceBook';
import { readPieces } from './readPieces';
import { scrapPiece, successorOf, type Scrapping } from './scrapPiece';

/** Changes of the job sheets' status columns that follow from the pieces; none where nobody knows which sheets the pieces are from. */
export async function jobSheetChanges(
  workbook: Workbook,
  pieces: readonly Piece[],
  read?: CatalogueRead,
): Promise<{ readonly changes: readonly Change[]; readonly undo: readonly Change[] }> {
  const all = (await jobsOfPieces(workbook, read)).flatMap(jobs => jobStatusChanges(pieces, jobs).writing ?? []);
  return { changes: all.flatMap(({ changes }) => changes), undo: all.flatMap(({ undo }) => undo) };
}

/**
 * Brings the status of the pieces up to what their rows are filled with, and that of the job sheets up to the pieces.
 * @param now `2026-10-05 07:12`
 * @param traced what was written over in a row: it goes into the note of the piece there
 * @param read the catalogue, where it was read already
 * @returns undefined where all fit
 */
export async function statusWriting(
  workbook: Workbook,
  now: string,
  traced: { readonly row: number; readonly replaced: readonly string[] } = { row: 0, replaced: [] },
  read?: CatalogueRead,
): Promise<Writing | undefined> {
  const pieces = await readPieces(workbook);
  if (!pieces) return undefined;
  const own = pieceStatusChanges(pieces, now);
  const jobs = await jobSheetChanges(
    workbook,
    pieces.pieces.map(piece => ({ ...piece, status: statusOfPiece(piece) })),
    read,
  );
  const written = traced.replaced.length > 0 ? pieces.pieces.find(({ row }) => row === traced.row) : undefined;
  const note = written && changePiece(pieces, written, { note: trace(written.note, traced.replaced, now) }, now);
  const changes = [...(own?.changes ?? []), ...(note?.changes ?? []), ...jobs.changes];
  if (changes.length === 0) return undefined;
  return {
    changes,
    undo: [...jobs.undo, ...(note?.undo ?? []), ...(own?.undo ?? [])],
    message: 'The status of pieces and job lines is brought up to date.',
  };
}

/** The pieces as they are once one is scrapped and its successor waits. */
function withScrapped(pieces: readonly Piece[], scrapped: Piece): readonly Piece[] {
  const rest = pieces.map(piece => (piece === scrapped ? { ...piece, status: 'scrapped' as const } : piece));
  if (successorOf(pieces, scrapped)) return rest;
  const ends = scrapped.ends.map(end => ({ ...end, readings: [] })) as unknown as Piece['ends'];
  const blank = { status: '' as const, finished: undefined, testedAt: undefined, ends };
  return [...rest, { ...scrapped, ...blank, piece: `${assemblyOf(scrapped)}-0`, replaces: scrapped.piece }];
}

/**
 * Scraps a piece, adds its successor, and brings the job sheet's status down to it.
 * @param read the catalogue, where it was read already
 * @throws Error with a sentence, as `scrapPiece`
 */
export async function scrapWriting(
  workbook: Workbook,
  book: PieceBook,
  piece: Piece,
  scrapping: Scrapping,
  read?: CatalogueRead,
): Promise<Writing> {
  const own = scrapPiece(book, piece, scrapping);
  const jobs = await jobSheetChanges(workbook, withScrapped(book.pieces?.pieces ?? [], piece), read);
  return { ...own, changes: [...own.changes, ...jobs.changes], undo: [...jobs.undo, ...own.undo] };
}
