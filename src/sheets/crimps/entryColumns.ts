import { addressOf, cellAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { CrimpField, CrimpRole } from './crimpRoles';
import type { CrimpTable } from './crimpTable';

/** Columns that Entry fills in, as they are headed. */
const OFFERED: readonly (readonly [CrimpField, string])[] = [
  ['date', 'Date'],
  ['time', 'Time'],
  ['operator', 'Operator'],
  ['die', 'Die'],
  ['dial', 'Dial'],
];
/** With both ends in a row each end has its own. */
const OF_ENDS: ReadonlySet<CrimpField> = new Set(['die', 'dial']);

/** Headings of the columns that a table has not got, of those that Entry fills in. */
export function missingColumns({ columns, layout }: Pick<CrimpTable, 'columns' | 'layout'>): readonly string[] {
  const has = (role: CrimpRole) => columns[role] !== undefined;
  return OFFERED.flatMap(([field, heading]) => {
    if (has(field)) return [];
    if (layout !== 'ends' || !OF_ENDS.has(field)) return has(`${field}A` as CrimpRole) ? [] : [heading];
    return (['A', 'B'] as const).flatMap(end => (has(`${field}${end}` as CrimpRole) ? [] : [`${heading} ${end}`]));
  });
}

/**
 * The changes that add the missing columns at the right of a table.
 * @throws Error with a sentence where there is no room, or the table is the host's own
 */
export function addEntryColumns(table: CrimpTable): readonly Change[] {
  const { table: found, reader } = table;
  const { block, below, hostTable, sheet } = found;
  const headings = missingColumns(table);
  const list = headings.join(', ');
  if (block.row < 0 || found.headings.every(heading => /^column [A-Z]+$/.test(heading)))
    throw new Error('These readings have no headings: write headings above them first.');
  if (hostTable) throw new Error(`This is a table of Excel’s own: add the columns ${list} to it by hand.`);
  const first = block.column + block.columns;
  const last = Math.max(block.row + block.rows - 1, ...below);
  for (let row = block.row; row <= last; row++) {
    for (let column = first; column <= first + headings.length; column++) {
      if (reader.cells.isEmpty(row, column)) continue;
      const address = cellAddress({ row, column });
      throw new Error(
        `There is no room at the right of the table: ${address} is not blank. Insert columns there, headed ${list}.`,
      );
    }
  }
  const at = { sheet, address: addressOf({ row: block.row, column: first, rows: 1, columns: headings.length }) };
  return [
    { kind: 'values', at, values: [headings] },
    { kind: 'style', at, style: { bold: true } },
  ];
}
