import { numbersText } from '../pieces/cardPieces';
import { partsOfNumber } from '../pieces/piece';
import type { PlannedCut, PlannedReel } from './plannedReel';

/** The number of the piece that a cut becomes. */
export type NumberOf = ReadonlyMap<object, string>;

/** Equal cuts of a reel for one line, one behind the other: `4 × 570`. */
export type LineCuts = readonly [PlannedCut, ...PlannedCut[]];

/** The cuts of a reel, equal ones for one line together. */
export function lineCuts({ cuts }: Pick<PlannedReel, 'cuts'>): readonly LineCuts[] {
  const groups: [PlannedCut, ...PlannedCut[]][] = [];
  for (const cut of cuts) {
    const last = groups.at(-1);
    if (last?.[0].line === cut.line && last[0].length.eq(cut.length)) last.push(cut);
    else groups.push([cut]);
  }
  return groups;
}

/** What stands before the line in the numbers of all pieces, so that line and last figure say which piece it is; undefined where that is not so. */
export function sharedPrefix(reels: readonly PlannedReel[], numberOf: NumberOf): string | undefined {
  const prefixes = new Set<string | undefined>();
  for (const cut of reels.flatMap(({ cuts }) => cuts)) {
    const assembly = partsOfNumber(numberOf.get(cut) ?? '')?.assembly;
    const { line } = cut.line;
    prefixes.add(assembly !== undefined && line !== '' && assembly.endsWith(line) ? assembly.slice(0, -line.length) : undefined);
  }
  return prefixes.size === 1 ? [...prefixes][0] : undefined;
}

/** Numbers of the pieces that the cuts become: `1–3` behind their line where that says it; before any are known, which ones of their line they are. */
export function piecesText(cuts: LineCuts, numberOf: NumberOf, prefix: string | undefined): string {
  const numbers = cuts.map(cut => numberOf.get(cut)).filter(number => number !== undefined);
  const [{ line, piece: first }] = cuts;
  if (numbers.length < cuts.length) {
    const last = cuts.at(-1)!.piece;
    return `${first === last ? first : `${first}–${last}`} of ${line.ordered ?? line.quantity}`;
  }
  const text = numbersText(numbers).replaceAll(' … ', '–');
  return prefix === undefined ? text : text.replaceAll(`${prefix}${line.line}-`, '');
}
