import { lengthIn, type Length, type LengthUnit } from '../../core/units/lengthUnit';
import type { CutLine } from '../jobs/cutLine';
import type { Piece } from './piece';
import { isWaiting } from './pieceStatus';

/** A piece that waits for a plan, as a line to be cut. */
export interface WaitingCut extends CutLine {
  /** Number of the piece. */
  readonly waits: string;
}

/** Waiting pieces as lines to be cut, and those that cannot be. */
export interface WaitingCuts {
  readonly lines: readonly WaitingCut[];
  readonly problems: readonly { readonly row: number; readonly sentence: string }[];
}

/**
 * The pieces that the next plan takes up: successors of scrapped ones, and those to be made again. Lengths in the plan's unit, as the
 * first piece was cut.
 */
export function successorsToCut(pieces: readonly Piece[], unit: LengthUnit): WaitingCuts {
  const waiting = pieces.filter(isWaiting);
  const as = (length: Length | undefined) => length && lengthIn(length, unit);
  const lines = waiting.flatMap((piece): WaitingCut[] => {
    const cutLength = as(piece.cutLength);
    if (!cutLength || piece.hose === '' || piece.piece === '') return [];
    const [overall, shortest, longest] = [as(piece.overall), as(piece.shortest), as(piece.longest)];
    return [
      {
        waits: piece.piece,
        row: piece.row,
        line: piece.line || piece.piece,
        label: piece.label,
        hose: piece.hose,
        quantity: 1,
        wanted: cutLength,
        cutLength,
        overall,
        limits: shortest && longest && { shortest, longest },
        note: piece.replaces ? `${piece.piece} replaces ${piece.replaces}` : piece.note || undefined,
      },
    ];
  });
  const problems = waiting
    .filter(piece => !lines.some(({ waits }) => waits === piece.piece))
    .map(piece => ({
      row: piece.row,
      sentence: `piece ${piece.piece || '?'} waits to be cut, but names no ${piece.hose === '' ? 'hose' : 'cut length'}`,
    }));
  return { lines, problems };
}
