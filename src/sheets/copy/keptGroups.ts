import { addressOf, type Block } from '../../workbook/a1';
import type { KeptCells } from './readFirst';

/** Cells that hold the value of a formula, and why. */
export interface Kept {
  readonly sheet: string;
  readonly block: Block;
  readonly reason: string;
}

/** The list of kept cells: the same reason in rows one below the other is one line. */
export function keptGroups(kept: readonly Kept[]): KeptCells[] {
  const groups: { sheet: string; block: Block; reason: string }[] = [];
  const open = new Map<string, (typeof groups)[number]>();
  for (const { sheet, block, reason } of kept) {
    const key = `${sheet}\u001f${block.column} ${block.columns}\u001f${reason}`;
    const above = open.get(key);
    if (above && above.block.row + above.block.rows === block.row) {
      above.block = { ...above.block, rows: above.block.rows + block.rows };
      continue;
    }
    const group = { sheet, block, reason };
    open.set(key, group);
    groups.push(group);
  }
  return groups.map(({ sheet, block, reason }) => ({ sheet, address: addressOf(block), reason }));
}
