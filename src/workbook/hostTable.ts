import { blockOf, type Block } from './a1';
import type { HostTable } from './workbook';

/** A host's table as a block: heading row and rows; the row of totals below them is not among them. */
export interface HostBlock extends Block {
  readonly hasTotals?: boolean;
}

/** The tables of a sheet as blocks. */
export function hostBlocks(tables: readonly HostTable[]): readonly HostBlock[] {
  return tables.flatMap(({ address, hasTotals }) => {
    const block = blockOf(address);
    return block ? [{ ...block, ...(hasTotals && { hasTotals }) }] : [];
  });
}

/** All cells that a table takes, its row of totals among them. */
export function wholeTable({ hasTotals, row, column, rows, columns }: HostBlock): Block {
  return { row, column, rows: rows + (hasTotals ? 1 : 0), columns };
}
