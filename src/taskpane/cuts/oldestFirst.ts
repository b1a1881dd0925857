import type { CutLine } from './cutLine';
import type { CutSettings } from './cutSettings';
import { firstFit, piecesOf } from './firstFit';
import type { RackRow } from './rack';

/** Oldest first; what has no date comes last; equal dates stay in rack order. */
export function byAge(rack: readonly RackRow[]): readonly RackRow[] {
  const key = (row: RackRow) => row.made || '9999';
  return [...rack].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/**
 * The oldest pieces of stock that just serve: younger ones are added, one at a time, until first fit, longest piece first,
 * cuts everything. The plan is then made from these alone. All of the rack where even that is not enough.
 */
export function oldestThatServe(lines: readonly CutLine[], rack: readonly RackRow[], settings: CutSettings): readonly RackRow[] {
  const pieces = [...piecesOf(lines)].sort((a, b) => b.cutLength.cmp(a.cutLength));
  const single = byAge(rack).flatMap(row => Array.from({ length: Math.min(row.quantity, pieces.length) }, () => row));
  let [low, high] = [1, single.length];
  const serves = (count: number) => firstFit(pieces, single.slice(0, count).map(one), settings).missing.length === 0;
  if (!serves(high)) return byAge(rack);
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (serves(middle)) high = middle;
    else low = middle + 1;
  }
  return joined(single.slice(0, high));
}

const one = (row: RackRow): RackRow => ({ ...row, quantity: 1 });

function joined(rows: readonly RackRow[]): RackRow[] {
  const counts = new Map<RackRow, number>();
  for (const row of rows) counts.set(row, (counts.get(row) ?? 0) + 1);
  return [...counts].map(([row, quantity]) => ({ ...row, quantity }));
}
