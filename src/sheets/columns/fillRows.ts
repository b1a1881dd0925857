import { addressOf, blockOf } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import { missingFormulas, type MissingFormulas } from './missingFormulas';
import type { Columns } from './tableColumnsOf';

/** A table as any reader has read it: its cells, and which column is what. */
export interface ReadRows {
  readonly table: FoundTable;
  readonly columns: Readonly<Partial<Record<string, number>>>;
  readonly reader: { readonly cells: SheetCells };
}

function missingOf({ table, columns, reader }: ReadRows): MissingFormulas {
  const spans = Object.entries(columns).flatMap(([role, column]) =>
    column === undefined ? [] : [[role, { first: column, last: column }] as const],
  );
  return missingFormulas({ cells: reader.cells, table, columns: Object.fromEntries(spans) as Columns });
}

/** What the lines of several tables lack of the columns that we have written. */
export function missingIn(tables: readonly ReadRows[]): MissingFormulas {
  const found = tables.map(missingOf);
  return {
    rows: [...new Set(found.flatMap(({ rows }) => rows))].sort((a, b) => a - b),
    headings: [...new Set(found.flatMap(({ headings }) => headings))],
    changes: found.flatMap(({ changes }) => changes),
  };
}

/**
 * Fills what the lines lack.
 * @returns what was filled, in words
 * @throws Error with a sentence where the cells no longer hold what was read; nothing is written then
 */
export async function fillRows(workbook: Workbook, tables: readonly ReadRows[]): Promise<string> {
  const { rows, headings, changes } = missingIn(tables);
  const first = tables[0];
  const places = changes.flatMap(change => (change.kind === 'formulas' ? [change.at] : []));
  if (!first || places.length === 0) throw new Error('Every row has its formulas by now. Nothing was written.');
  const now = await workbook.read(places);
  const isAsRead = now.every(({ formulas, values }, index) => {
    const { row, column } = blockOf(places[index]!.address)!;
    const { cells } = first.reader;
    return formulas[0]![0] === cells.formula(row, column) && values[0]![0] === cells.value(row, column);
  });
  if (!isAsRead) {
    const at = addressOf(first.table.block);
    throw new Error(`The table ${at} of sheet ${first.table.sheet} has changed. Read it again. Nothing was written.`);
  }
  await workbook.write(changes, 'blank');
  return `Filled ${headings.join(', ')} in rows ${rows.join(', ')} of sheet ${first.table.sheet}.`;
}
