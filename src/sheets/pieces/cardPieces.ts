import type { Length } from '../../core/units/lengthUnit';
import type { CardPiece } from '../jobs/benchCard';
import type { Piece } from './piece';
import { lengthText } from '../table/lengthText';
import { isOtherLength, isVague, piecesOfLine, type JobIdentity } from './piecesOfLine';
import { statusOfPiece } from './pieceStatus';

/** The pieces of a line as its card names them: those that were scrapped keep their numbers, but get no row. */
export function cardPieces(all: readonly Piece[], line: JobIdentity, step?: Length): readonly CardPiece[] {
  const { pieces } = piecesOfLine(all, { ...line, quantity: undefined }, { step });
  return pieces.map(piece => ({
    piece: piece.piece,
    lot: piece.lot,
    reel: piece.reel,
    useBy: piece.useBy,
    isScrapped: statusOfPiece(piece) === 'scrapped',
  }));
}

/** `cut length 700 mm, while the line says 555 mm`; "" where no piece has another length. */
export function otherLengthsText(other: readonly Piece[], { cutLength }: Pick<JobIdentity, 'cutLength'>): string {
  const text = (length: Length | undefined) => length && `${lengthText(length.value, length.unit.symbol)} ${length.unit.symbol}`;
  const lengths = [...new Set(other.map(piece => text(piece.cutLength)))].join(', ');
  return lengths && `cut length ${lengths}, while the line says ${text(cutLength)}`;
}

/**
 * Pieces of a line's number that have another length than the line has now: the bench must not cut one for the other. For a line without
 * order and assembly number those of old weeks, which are cut, are no news.
 * @returns a sentence; undefined where there are none
 */
export function otherLengthNote(all: readonly Piece[], line: JobIdentity, step?: Length): string | undefined {
  const { good } = piecesOfLine(all, { ...line, quantity: undefined }, { anyLength: true });
  const isNews = (piece: Piece) => !isVague(line) || statusOfPiece(piece) === 'planned';
  const other = good.filter(piece => isOtherLength(piece, line, step) && isNews(piece));
  if (other.length === 0) return undefined;
  const names = numbersText(other.map(({ piece }) => piece));
  return `${names} on sheet Pieces: ${otherLengthsText(other, line)}`;
}

/** `H3-117-1 … 3`: numbers that follow each other, written short. */
export function numbersText(numbers: readonly string[]): string {
  const parts = numbers.map(number => /^(.*-)(\d+)$/.exec(number));
  const runs: string[][] = [];
  numbers.forEach((number, index) => {
    const [before, now] = [parts[index - 1], parts[index]];
    const follows = before && now && before[1] === now[1] && Number(now[2]) === Number(before[2]) + 1;
    if (follows) runs.at(-1)!.push(number);
    else runs.push([number]);
  });
  return runs.map(run => (run.length < 3 ? run.join(', ') : `${run[0]} … ${/\d+$/.exec(run.at(-1)!)![0]}`)).join(', ');
}

/** Pieces by the lot and reel they are cut from: a line over two lots is two groups. */
function lotGroups(
  pieces: readonly CardPiece[],
): readonly { readonly lot: string; readonly reel: string; readonly numbers: string }[] {
  const groups = new Map<string, { lot: string; reel: string; numbers: string[] }>();
  for (const { piece, lot, reel, isScrapped } of pieces) {
    if (isScrapped) continue;
    const key = `${lot}\u001f${reel}`;
    const group = groups.get(key) ?? { lot, reel, numbers: [] };
    groups.set(key, group);
    group.numbers.push(piece);
  }
  return [...groups.values()].map(group => ({ ...group, numbers: numbersText(group.numbers) }));
}

/** `H3-117-1 … 3: lot L70, reel A1; H3-117-4: lot L71`; "" where nothing was planned. */
export const lotsText = (pieces: readonly CardPiece[]): string =>
  lotGroups(pieces)
    .map(({ lot, reel, numbers }) => {
      const from = [lot && `lot ${lot}`, reel && `reel ${reel}`].filter(Boolean).join(', ');
      return from ? `${numbers}: ${from}` : numbers;
    })
    .join('; ');
