import { nameOfCell } from '../../cells/sheetCell';
import type { FoundTable } from './findTables';
import type { SheetCells } from './sheetCells';
import { isDitto } from './ditto';
import { headingNames, type ColumnsByRole } from './tableColumns';
import { correctionKey, type HeadingCorrections } from './headingCorrections';

/** What names are known, so that a column can be told by what stands in it. */
export interface KnownParts {
  readonly isHose?: ((name: string) => boolean) | undefined;
  readonly isFitting?: ((name: string) => boolean) | undefined;
  readonly isMachine?: ((name: string) => boolean) | undefined;
}

const SAMPLE_ROWS = 50;

/** Columns in which at least half of the texts are names that are known. */
function columnsNaming(cells: SheetCells, { block }: FoundTable, isKnown: KnownParts['isHose']): number[] {
  if (!isKnown) return [];
  const rows = Array.from({ length: Math.min(block.rows - 1, SAMPLE_ROWS) }, (_, i) => block.row + 1 + i);
  return Array.from({ length: block.columns }, (_, i) => block.column + i).filter(column => {
    const texts = rows.map(row => nameOfCell(cells.value(row, column))).filter(text => text !== '' && !isDitto(text));
    return texts.length > 0 && texts.filter(isKnown).length * 2 >= texts.length;
  });
}

type PartRole = 'hose' | 'fittingA' | 'fittingB';

/**
 * Hose and couplings by the names that stand in the columns: they win over the words of a heading, but never over what somebody said by
 * hand.
 */
export function nameColumns(
  cells: SheetCells,
  table: FoundTable,
  byWords: ColumnsByRole<PartRole>,
  parts: KnownParts,
  corrections: HeadingCorrections,
): ColumnsByRole<PartRole> {
  const names = headingNames(table.headings);
  const isFree = (column: number) => !corrections.has(correctionKey(names[column - table.block.column] ?? ''));
  const hoses = columnsNaming(cells, table, parts.isHose).filter(isFree);
  const fittings = columnsNaming(cells, table, parts.isFitting).filter(isFree);
  const found: Partial<Record<PartRole, number>> = {};
  if (hoses.length > 0 && !hoses.includes(byWords.hose ?? -1)) found.hose = hoses[0]!;
  const { fittingA, fittingB } = byWords;
  const named = [fittingA, fittingB].filter(column => column !== undefined && fittings.includes(column));
  const rest = fittings.filter(column => !named.includes(column));
  if (named.length === 2 || rest.length === 0) return found;
  const ends = [...named, ...rest].slice(0, 2).sort((one, other) => one! - other!);
  if (ends[0] !== undefined) found.fittingA = ends[0];
  if (ends[1] !== undefined) found.fittingB = ends[1];
  return found;
}

/**
 * The column `Machine` where it names crimpers: at least half of its values are names in Machines. Beside a hose list it is what the hose
 * is for, and then undefined.
 */
export function crimperColumn(cells: SheetCells, table: FoundTable, isMachine: KnownParts['isMachine']): number | undefined {
  const index = table.headings.findIndex(heading => correctionKey(heading) === 'machine');
  const column = table.block.column + index;
  return index >= 0 && columnsNaming(cells, table, isMachine).includes(column) ? column : undefined;
}
