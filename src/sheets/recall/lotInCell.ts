import { pieceKey } from '../pieces/piece';
import { namesIn } from '../table/namesInCell';

/**
 * What a cell says of a lot. `named`: it lists it. `mentioned`: it has it among other words, in another spelling or with a question mark, so
 * that nobody can exclude it. `none`: it names no lot at all. `other`: it names others.
 */
export type LotInCell = 'named' | 'mentioned' | 'none' | 'other';

const DASHES = /[\s\p{Pd}]+/gu;
const NO_LOT = /^(?:n ?\/ ?a|unknown|not known|none|no lot|tbd|mixed|various|[^\p{L}\p{N}]*)$/u;

const escaped = (sign: string) => sign.replace(/[\\^$.*+?()[\]{}|/]/, '\\$&');

/** Whether a lot stands in a text as a word, with or without hyphens and blanks. */
function standsIn(text: string, lot: string): boolean {
  const signs = lot.replace(DASHES, '');
  if (signs === '' || !text.replace(DASHES, '').includes(signs)) return false;
  const word = Array.from(signs, escaped).join('[\\s\\p{Pd}]*');
  return new RegExp(`(?<![\\p{L}\\p{N}])${word}(?![\\p{L}\\p{N}])`, 'u').test(text);
}

const SPAN = /(?<![\p{L}\p{N}])(\p{L}*)(\d{1,12}) ?(?:\p{Pd}|…|\.{2,3}| to ) ?(\p{L}*)(\d{1,12})(?!\d)/gu;

/** Whether a text has a span of lots with this one in it: `L68 to L72`, `L68-72`. */
function isInSpan(text: string, lot: string): boolean {
  const [, prefix, digits] = /^(\p{L}*)(\d{1,12})$/u.exec(lot.replace(DASHES, '')) ?? [];
  return [...text.matchAll(SPAN)].some(([, first, from, last, to]) => {
    const isSame = first === prefix && (last === '' || last === prefix);
    return isSame && Number(digits) >= Number(from) && Number(digits) <= Number(to);
  });
}

/** Reads the cell of a lot for one lot: `L70; L71` names L70, `L70-2`, `Lot L70` and `L71 (was L70)` mention it. */
export function lotInCell(text: string, lot: string): LotInCell {
  const [cell, wanted] = [pieceKey(text), pieceKey(lot)];
  const names = namesIn(text).map(pieceKey);
  // The whole cell counts, too: a lot's own name may have a comma.
  if (cell === wanted || names.includes(wanted)) return 'named';
  if (NO_LOT.test(cell)) return 'none';
  if (cell.includes('?') || standsIn(cell, wanted) || isInSpan(cell, wanted)) return 'mentioned';
  // A cell that says less than what was asked may mean the same: `L70`, asked for `Lot L70` or `L70-2`. Parts of `52/24` say nothing.
  const whole = names.filter(name => /\p{L}/u.test(name) && /\d/.test(name));
  return [cell, ...whole].some(name => standsIn(wanted, name)) ? 'mentioned' : 'other';
}
