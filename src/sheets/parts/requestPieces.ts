import { addressOf, blockOf } from '../../workbook/a1';
import { bytesOf, MOST_BYTES } from '../../workbook/requestSize';
import type { Change } from '../../workbook/workbook';

/** Changes that go to the host together. */
export interface RequestPiece {
  readonly changes: readonly Change[];
  readonly bytes: number;
}

/** What a change without cells weighs. */
const SMALL = 500;

const weight = (change: Change): number =>
  change.kind === 'values' ? bytesOf(change.values) : change.kind === 'formulas' ? bytesOf(change.formulas) : SMALL;

/** A large block of values as several of whole rows. */
function inRows(change: Change, most: number): readonly Change[] {
  const parts = Math.ceil(weight(change) / most);
  if (change.kind !== 'values' || parts < 2) return [change];
  const block = blockOf(change.at.address)!;
  const rows = Math.max(1, Math.floor(block.rows / parts));
  return Array.from({ length: Math.ceil(block.rows / rows) }, (_, index): Change => {
    const values = change.values.slice(index * rows, (index + 1) * rows);
    const at = { sheet: change.at.sheet, address: addressOf({ ...block, row: block.row + index * rows, rows: values.length }) };
    return { kind: 'values', at, values };
  });
}

/**
 * Changes in pieces that one request each can carry, in their order.
 * @param most bytes of a piece; a single row is never parted
 */
export function requestPieces(changes: readonly Change[], most = MOST_BYTES): readonly RequestPiece[] {
  const pieces: { changes: Change[]; bytes: number }[] = [];
  for (const change of changes.flatMap(each => inRows(each, most))) {
    const bytes = weight(change);
    const last = pieces.at(-1);
    if (last && last.bytes + bytes <= most) {
      last.changes.push(change);
      last.bytes += bytes;
    } else pieces.push({ changes: [change], bytes });
  }
  return pieces;
}
