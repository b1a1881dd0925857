import { Decimal } from '../../core/units/decimal';
import { lengthIn, lengthUnitOf, type Length } from '../../core/units/lengthUnit';
import { usualStep } from '../table/benchStep';
import { pieceKey, type Piece, assemblyOf } from './piece';
import { statusOfPiece } from './pieceStatus';

/** What tells one job line from another. */
export interface JobIdentity {
  readonly assembly: string;
  readonly order: string;
  readonly line: string;
  readonly label: string;
  readonly hose: string;
  /** Left out where it is not known: then pieces of any length are the line's. */
  readonly cutLength?: Length | undefined;
}

const key = (...names: readonly string[]) => names.map(pieceKey).join('\u001f');
const byAssembly = (hose: string, assembly: string) => key('assembly', hose, assembly);
const byLine = ({ hose, order, line, label }: Omit<JobIdentity, 'assembly'>) => key('line', hose, order, line, label);

/** A line has the pieces of its assembly's number; one without has those of its order, line and label. Always those of its hose. */
const keyOfLine = (line: JobIdentity) => (line.assembly !== '' ? byAssembly(line.hose, line.assembly) : byLine(line));

/** The keys of the lines that a piece may have been made for. */
const keysOfPiece = (piece: Piece) => [byAssembly(piece.hose, assemblyOf(piece)), byLine(piece)];

/** Nothing but line, label and hose tells such a line from that of another week. */
export const isVague = ({ order, assembly }: Pick<JobIdentity, 'order' | 'assembly'>): boolean => order === '' && assembly === '';

/** Millimetres; where nobody says what the bench cuts, lengths that differ by less may be one length, rounded. */
const COARSEST_STEP = new Decimal('12.7');

/**
 * True where a piece was not planned for the length that the line has now.
 * @param step what the bench can cut: a cut may be so far from what the sheet says
 */
export function isOtherLength({ cutLength }: Piece, line: Pick<JobIdentity, 'cutLength'>, step?: Length): boolean {
  if (!cutLength || !line.cutLength) return false;
  const usual = step && lengthIn({ value: usualStep(lengthUnitOf(step.unit)), unit: step.unit }, 'mm');
  const rounding = step && usual ? Decimal.max(usual, lengthIn(step, 'mm')) : COARSEST_STEP;
  return lengthIn(cutLength, 'mm').minus(lengthIn(line.cutLength, 'mm')).abs().gte(rounding);
}

const isAnothers = (piece: Piece, line: JobIdentity, step?: Length) => isVague(line) && isOtherLength(piece, line, step);

/** True where a piece was made for a line; one of another length is not that of a line without order and assembly number. */
export const isOfLine = (piece: Piece, line: JobIdentity): boolean =>
  keysOfPiece(piece).includes(keyOfLine(line)) && !isAnothers(piece, line);

/** Pieces by key: they are looked up for each line of a sheet, and a list of thousands must not be gone through each time. */
const indexes = new WeakMap<readonly Piece[], ReadonlyMap<string, readonly Piece[]>>();

function indexOf(all: readonly Piece[]): ReadonlyMap<string, readonly Piece[]> {
  const known = indexes.get(all);
  if (known) return known;
  const index = new Map<string, Piece[]>();
  for (const piece of all) {
    for (const name of keysOfPiece(piece)) {
      const found = index.get(name);
      if (found) found.push(piece);
      else index.set(name, [piece]);
    }
  }
  indexes.set(all, index);
  return index;
}

/** The pieces of a line, and how many it still wants. */
export interface PiecesOfLine {
  readonly pieces: readonly Piece[];
  /** Those that were not scrapped. */
  readonly good: readonly Piece[];
  /** Pieces that nobody has planned yet; those that wait as successors are not among them. */
  readonly open: number;
}

/** How pieces are looked for. */
export interface PieceLook {
  /** What the bench can cut. */
  readonly step?: Length | undefined;
  /** Pieces of another length, too, however little is known of the line. */
  readonly anyLength?: boolean;
}

/** Pieces of a line that is to be made so many times; those of another length are not taken for a line without order and assembly number. */
export function piecesOfLine(
  all: readonly Piece[],
  line: JobIdentity & { readonly quantity: number | undefined },
  { step, anyLength = false }: PieceLook = {},
): PiecesOfLine {
  const found = indexOf(all).get(keyOfLine(line)) ?? [];
  const pieces = anyLength ? found : found.filter(piece => !isAnothers(piece, line, step));
  const good = pieces.filter(piece => statusOfPiece(piece) !== 'scrapped');
  return { pieces, good, open: Math.max(0, (line.quantity ?? 0) - good.length) };
}

/** Pieces without those that somebody said are other work. @param otherWork their numbers, as `pieceKey` has them */
export const withoutOtherWork = (all: readonly Piece[], otherWork: ReadonlySet<string> = new Set()): readonly Piece[] =>
  otherWork.size === 0 ? all : all.filter(({ piece }) => !otherWork.has(pieceKey(piece)));
