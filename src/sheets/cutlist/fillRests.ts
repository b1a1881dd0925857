import type { CutLine } from '../jobs/cutLine';
import type { RackRow } from '../rack/rackRow';
import type { CutSettings } from './cutSettings';
import { firstFit, onePerPiece, type FilledStock } from './firstFit';
import type { HoseJob } from './hoseJob';
import { filledReels, type PlannedReel } from './plannedReel';

/** A plan whose rests were filled, and what still finds no room. */
export interface FilledRests {
  readonly lines: readonly CutLine[];
  readonly reels: readonly PlannedReel[];
  readonly later: readonly CutLine[];
}

const isSame = (one: CutLine, other: CutLine) =>
  one.row === other.row && one.waits === other.waits && one.isAgain === other.isAgain;

/** Lines with so many pieces as are among these; those without any fall away. */
function countedLines(lines: readonly CutLine[], pieces: readonly CutLine[]): readonly CutLine[] {
  return lines.flatMap(line => {
    const quantity = pieces.filter(piece => isSame(piece, line)).length;
    return quantity > 0 ? [{ ...line, quantity, ordered: line.ordered ?? line.quantity }] : [];
  });
}

/**
 * Lays pieces that were left out of a plan on what its reels leave, then on stock that it does not use, as far as they fit.
 * @param whole all lines in the order of the sheet, and the whole rack
 * @returns undefined where nothing more fits
 */
export function fillRests(
  whole: Pick<HoseJob, 'lines' | 'rack' | 'today'>,
  reels: readonly PlannedReel[],
  later: readonly CutLine[],
  settings: CutSettings,
): FilledRests | undefined {
  // What is left of a reel that is cut into is squared off already.
  const rests = reels.map((reel): RackRow => ({ ...reel.rack, quantity: 1, length: reel.left.plus(reel.squaring) }));
  const taken = (row: number) => reels.filter(reel => reel.rack.row === row).length;
  const unused = whole.rack.map(row => ({ ...row, quantity: row.quantity - taken(row.row) }));
  const waiting = onePerPiece(later);
  const onRests = firstFit(waiting, rests, settings);
  const onUnused = firstFit(onRests.missing, unused, settings);
  const { missing } = onUnused;
  if (missing.length === waiting.length) return undefined;
  const addedTo = (rack: RackRow) => onRests.stock.find(each => each.rack === rack)?.cuts ?? [];
  const before = reels.flatMap(({ cuts }) => cuts.map(({ line }) => line));
  const added = [...onRests.stock, ...onUnused.stock].flatMap(({ cuts }) => cuts.map(({ line }) => line));
  const lines = countedLines(whole.lines, [...before, ...added]);
  const asCounted = ({ line, length }: FilledStock['cuts'][number]) => ({
    length,
    line: lines.find(each => isSame(each, line))!,
  });
  const filled: readonly FilledStock[] = [
    ...reels.map((reel, index) => ({ rack: reel.rack, cuts: [...reel.cuts, ...addedTo(rests[index]!)].map(asCounted) })),
    ...onUnused.stock.map(({ rack, cuts }) => ({ rack, cuts: cuts.map(asCounted) })),
  ];
  return { lines, reels: filledReels(filled, settings, whole.today), later: countedLines(later, missing) };
}
