import type { Catalogue } from '../core/catalogue/catalogue';
import type { RawCell, RawTable } from '../core/catalogue/rawTable';
import { readCatalogue, type RawTables } from '../core/catalogue/readCatalogue';
import { TABLE_NAMES } from '../core/catalogue/tables/catalogueTables';
import { cellContent, IncomingError } from './cellContent';
import { passedOn } from './cellError';
import { cellsOfArgument, type Cells } from './singles';

function rawCell(cell: unknown): RawCell {
  const content = cellContent(cell);
  return content instanceof IncomingError ? { error: content.code } : content;
}

const isBlank = (cell: unknown) => cell === null || cell === undefined || cell === '';

/** A table without the blank rows behind it; undefined where it is left out or wholly blank. */
function rawTable(label: string, cells: Cells): RawTable | undefined {
  const block = cellsOfArgument(cells);
  let height = block.length;
  while (height > 0 && block[height - 1]!.every(isBlank)) height--;
  if (height === 0) return undefined;
  const table = block.slice(0, height).map(row => row.map(rawCell));
  if (table.every(row => row.every(cell => cell === null))) return undefined;
  // An error value in a table belongs to its row; one in place of the table is the error of the whole call.
  const only = block.length === 1 && block[0]!.length === 1 ? cellContent(block[0]![0]) : null;
  if (only instanceof IncomingError) throw passedOn(only, label);
  return table;
}

/**
 * Reads a catalogue from what a host passes or reads for CATALOGUE's arguments, in their order.
 * @throws TradeError as readCatalogue; the cell error that stands in place of a whole table
 */
export function catalogueFromCells(cells: readonly Cells[]): Catalogue {
  const tables: { -readonly [K in keyof RawTables]: RawTables[K] } = {};
  TABLE_NAMES.forEach((name, index) => (tables[name] = rawTable(name, cells[index])));
  return readCatalogue(tables);
}
