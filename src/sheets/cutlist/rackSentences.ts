import { rackPlace, type RackRow } from '../rack/rackRow';
import type { Piece } from '../pieces/piece';
import { numbersText } from '../pieces/cardPieces';
import { statusOfPiece } from '../pieces/pieceStatus';
import type { Gathered } from './gatherCuts';
import type { HosePlan } from './planHose';

const nameOf = (row: Pick<RackRow, 'place' | 'reel' | 'lot' | 'row'>) =>
  [rackPlace(row), row.lot && `lot ${row.lot}`].filter(Boolean).join(', ') || `row ${row.row}`;

/** Hose that is left out because it is beyond the age limit; undefined where there is none. */
export function tooOldSentence({ tooOld }: Gathered): string | undefined {
  if (tooOld.length === 0) return undefined;
  const names = tooOld.map(row => `${row.hose}, ${nameOf(row)} (made ${row.made})`);
  return `Older than your limit, left out: ${names.join('; ')}.`;
}

/** Pieces that are on reels and nobody has cut yet: those that this very plan gives other reels, and the others. */
function openPieces({ pieces, anew }: Gathered): { readonly anew: readonly Piece[]; readonly others: readonly Piece[] } {
  const isOpen = (piece: Piece) => statusOfPiece(piece) === 'planned' && (piece.lot !== '' || piece.reel !== '');
  const open = (pieces?.pieces ?? []).filter(isOpen);
  return { anew: open.filter(piece => anew.has(piece)), others: open.filter(piece => !anew.has(piece)) };
}

/**
 * The rack that has the hose of the pieces that are planned anew, and of no others: the newest cut list was planned on it for just these.
 * @returns undefined where no rack is known to
 */
export function rackOfAnew(gathered: Gathered): string | undefined {
  const numbers = openPieces(gathered).anew.map(({ piece }) => piece);
  const planned = new Set(gathered.before?.pieces);
  const areAll = numbers.length === planned.size && numbers.every(number => planned.has(number));
  return areAll ? gathered.before?.sheet : undefined;
}

/**
 * Pieces that are planned anew on the rack that the newest cut list left: it has their hose taken off already.
 * @returns a sentence; undefined where nothing comes off twice
 */
export function twiceSentence(gathered: Gathered): string | undefined {
  const { rackSheet, newestRack } = gathered;
  const { anew } = openPieces(gathered);
  if (rackSheet !== newestRack || anew.length === 0) return undefined;
  const rack = rackOfAnew(gathered);
  const help =
    rack === undefined ? 'Give it back to the reels on that sheet first.' : `Take the rack ${rack}, on which they were planned.`;
  const numbers = numbersText(anew.map(({ piece }) => piece));
  return `The rack ${rackSheet} has the hose of ${numbers} taken off already, and here it would come off once more. ${help}`;
}

/**
 * Reels of a plan on which pieces are planned that nobody has cut yet. The rack that the newest cut list left counts them in; any other
 * rack does not know of them.
 * @returns a sentence; undefined where nothing is counted twice
 */
export function unconfirmedSentence(gathered: Gathered, plans: readonly HosePlan[]): string | undefined {
  const { rackSheet, newestRack } = gathered;
  if (rackSheet === newestRack) return undefined;
  const open = openPieces(gathered).others;
  const reels = plans.flatMap(plan => plan.reels.map(({ rack }) => rack));
  const found = [...new Set(reels)].flatMap(rack => {
    const reel = rack.reel || rack.place;
    const own = open.filter(piece => piece.lot === rack.lot && piece.reel === reel);
    return own.length > 0 ? [`${nameOf(rack)} (${own.map(({ piece }) => piece).join(', ')})`] : [];
  });
  if (found.length === 0) return undefined;
  const help = newestRack ? ` Take the rack ${newestRack}, which counts them in.` : '';
  return `Pieces are planned on these reels already and not cut yet, so there may be less hose left: ${[...new Set(found)].join('; ')}.${help}`;
}

/**
 * Hose that its own status keeps from being used: left out, or used all the same because somebody ticked it.
 * @returns a sentence each; none where no status says so
 */
export function barredSentences({ rack }: Pick<Gathered, 'rack'>, plans: readonly HosePlan[]): readonly string[] {
  const left = rack.report.leftOut.filter(({ reason }) => reason === 'barred');
  const used = new Set(plans.flatMap(plan => plan.reels.map(reel => reel.rack.row)));
  const taken = rack.rows.filter(({ row, barred }) => barred !== undefined && used.has(row));
  const message = (rows: readonly { readonly row: number; readonly said: string | undefined }[]) =>
    rows.map(({ row, said }) => `row ${row} (${said})`).join('; ');
  return [
    ...(left.length > 0 ? [`Left out of the rack: ${message(left.map(({ row, sentence }) => ({ row, said: sentence })))}.`] : []),
    ...(taken.length > 0
      ? [`Planned on although their status says no: ${message(taken.map(({ row, barred }) => ({ row, said: barred })))}.`]
      : []),
  ];
}
