import { lengthIn } from '../../core/units/lengthUnit';
import { convertMeasure } from '../../core/units/measureUnit';
import type { Piece, PieceEnd, PieceStatus } from './piece';

/** The way of a piece; a scrapped one has left it. */
const WAY = ['', 'planned', 'cut', 'crimped', 'tested', 'done'] as const satisfies readonly PieceStatus[];

/** What may stand behind a word: the day. */
const DAY = '(?:[\\s,;:.(–-]*\\d[\\d\\s./:-]*\\)?)?$';
const word = (words: string, behind = DAY) => new RegExp(`^(?:${words})${behind}`, 'iu');

const WORDS: readonly (readonly [RegExp, PieceStatus])[] = [
  // Whatever is written behind it, scrap is scrap.
  [word('scrap(?:ped)?|scraped|reject(?:ed)?|waste|wasted|junk(?:ed)?', '(?![\\p{L}\\d])'), 'scrapped'],
  [word('done|finished|complete|completed|ready|shipped|delivered|closed|✓|✔|☑|x|yes'), 'done'],
  [word('tested|proof[- ]tested'), 'tested'],
  [word('crimped'), 'crimped'],
  [word('cut|sawn'), 'cut'],
  [word('planned|open|new|to (?:do|cut|make)|scheduled|started|in work|[-–—]'), 'planned'],
];

/** What a cell of the column Status says; undefined for a word that nobody knows. */
export function pieceStatusOf(text: string): PieceStatus | undefined {
  return text === '' ? '' : WORDS.find(([words]) => words.test(text))?.[1];
}

/** How far one status is on the way. */
export const statusRank = (status: PieceStatus): number => WAY.indexOf(status as (typeof WAY)[number]);

/** An end that is to be crimped: it has a coupling, a die or a target. */
export const isCrimpedEnd = ({ fitting, die, target }: PieceEnd): boolean => fitting !== '' || die !== '' || target !== undefined;

const isMeasured = ({ readings }: PieceEnd) => readings.length > 0 && readings.every(reading => reading !== undefined);
const isBegun = ({ readings }: PieceEnd) => readings.some(reading => reading !== undefined);

/** Says where a test did not reach the pressure that was asked for; undefined where it did, or nobody tested. */
function shortfallOf({ testPressure, testedAt }: Piece): string | undefined {
  if (!testPressure || !testedAt) return undefined;
  const asked = convertMeasure(testPressure.value, testPressure.unit, testedAt.unit);
  if (testedAt.value.gte(asked)) return undefined;
  return `tested at ${testedAt.value} of ${asked.toDecimalPlaces(1)} ${testedAt.unit.symbol}`;
}

const REJECTED = /^(?:TIGHT|LOOSE|OVAL|UNSURE|REJECTED|SHORT|LONG)$/i;

/** `SHORT` or `LONG` where the finished length is out of its limits, else `IN SPEC`; "" where it cannot be judged. */
export function judgeFinishedLength({ finished, shortest, longest }: Pick<Piece, 'finished' | 'shortest' | 'longest'>): string {
  if (!finished || (!shortest && !longest)) return '';
  const length = lengthIn(finished, 'mm');
  if (shortest && length.lt(lengthIn(shortest, 'mm'))) return 'SHORT';
  return longest && length.gt(lengthIn(longest, 'mm')) ? 'LONG' : 'IN SPEC';
}

/** Why a piece cannot be released: verdicts other than IN SPEC, and a test below the pressure that was asked for. */
export function rejections(piece: Piece): readonly string[] {
  const { ends, lengthVerdict } = piece;
  const length = lengthVerdict || judgeFinishedLength(piece);
  const pressure = shortfallOf(piece);
  return [
    ...ends.flatMap(({ verdict }, index) => (REJECTED.test(verdict) ? [`end ${index === 0 ? 'A' : 'B'} ${verdict}`] : [])),
    ...(REJECTED.test(length) ? [`finished length ${length}`] : []),
    ...(pressure ? [pressure] : []),
  ];
}

/** How far the filled cells say that a piece is. */
function filledStatus(piece: Piece): PieceStatus {
  const { ends, testedAt, flushed, capped, finished } = piece;
  const crimped = ends.filter(isCrimpedEnd);
  const isCrimped = crimped.length > 0 && crimped.every(isMeasured);
  if (isCrimped && testedAt) {
    return flushed && capped && rejections(piece).length === 0 ? 'done' : 'tested';
  }
  if (isCrimped) return 'crimped';
  return ends.some(isBegun) || finished !== undefined ? 'cut' : piece.status;
}

/**
 * How far a piece is: what its status cell says, or what its filled cells say where that is further. A scrapped piece stays scrapped,
 * and where a word stands that nobody knows, nothing moves on.
 * Filled: all readings = crimped; with the pressure reached = tested; flushed and capped and nothing rejected = done.
 */
export function statusOfPiece(piece: Piece): PieceStatus {
  if (piece.status === 'scrapped' || piece.ownStatus !== undefined) return piece.status;
  const filled = filledStatus(piece);
  return statusRank(filled) > statusRank(piece.status) ? filled : piece.status;
}

/** True where a piece waits for a plan: the successor of a scrapped one, or one to be made again. */
export const isWaiting = (piece: Piece): boolean => statusOfPiece(piece) === '';
