import type { Catalogue } from '../../core/catalogue/catalogue';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { readCatalogue, type RawTables } from '../../core/catalogue/readCatalogue';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { addressOf } from '../../workbook/a1';
import { catalogueReferences } from '../../workbook/catalogueFormula';
import { tablePlaces } from '../../workbook/tablePlaces';
import { catalogueCells, type CatalogueCell } from '../../workbook/workbookCatalogueSource';
import type { CellValue, RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';

/** A table of the catalogue that stands in a workbook. */
export interface StandingTable {
  readonly table: TableName;
  /** As the formula names it. */
  readonly at: RangeAddress;
  /** The used part of it. */
  readonly content: RangeContent;
  readonly raw: RawTable;
}

/** The catalogue that stands in a workbook: its cell, its tables, what they give. */
export interface StandingCatalogue {
  readonly cell: RangeAddress;
  readonly formula: string;
  /** What the cell shows: the handle, or an error with its sentence. */
  readonly shown: CellValue;
  /** The cell is named Catalogue, so that formulas may call it so. */
  readonly isNamed: boolean;
  /** Other CATALOGUE cells of the workbook. */
  readonly others: readonly RangeAddress[];
  readonly tables: readonly StandingTable[];
  /** The formula names its tables plainly, and all of them are there. */
  readonly canBeFollowed: boolean;
  readonly catalogue: Catalogue | undefined;
  /** Why there is no catalogue. */
  readonly reason: string;
}

const rawCell = (value: CellValue): RawCell => (value === '' ? null : typeof value === 'object' ? { error: value.error } : value);

/** Cells of a range as a table of the catalogue. */
export function rawTableOf({ values }: Pick<RangeContent, 'values'>): RawTable {
  return values.map(row => row.map(rawCell));
}

const isWhollyBlank = (table: RawTable) => table.every(row => row.every(cell => cell === null || cell === ''));

const placeOf = ({ sheet, row, column }: CatalogueCell): RangeAddress => ({
  sheet,
  address: addressOf({ row, column, rows: 1, columns: 1 }),
});

const CANNOT_FOLLOW = 'The pane cannot follow the Catalogue formula: give ranges, names or tables.';

/** The tables; a sentence where the formula cannot be followed. */
async function tablesOf(workbook: Workbook, cell: CatalogueCell): Promise<StandingTable[] | string> {
  const references = catalogueReferences(cell.formula, cell.sheet);
  if (!references) return CANNOT_FOLLOW;
  const places = await tablePlaces(workbook, references);
  const lost = TABLE_NAMES[places.indexOf(undefined)];
  if (lost) return `The pane cannot follow the ${lost} of the Catalogue formula: give a range, a name or a table.`;
  const named = places.flatMap((at, index) => (at && TABLE_NAMES[index] ? [{ table: TABLE_NAMES[index], at }] : []));
  const contents = await workbook.read(named.map(({ at }) => at));
  return named.map((place, index) => ({ ...place, content: contents[index]!, raw: rawTableOf(contents[index]!) }));
}

/** The tables as CATALOGUE reads them: those without any filled cell are left out. */
export function rawTablesOf(tables: readonly Pick<StandingTable, 'table' | 'raw'>[]): RawTables {
  return Object.fromEntries(tables.filter(({ raw }) => !isWhollyBlank(raw)).map(({ table, raw }) => [table, raw]));
}

function read(tables: RawTables): Pick<StandingCatalogue, 'catalogue' | 'reason'> {
  try {
    return { catalogue: readCatalogue(tables), reason: '' };
  } catch (error) {
    return { catalogue: undefined, reason: error instanceof Error ? error.message : String(error) };
  }
}

/** The catalogue of the cell named Catalogue, else of the first CATALOGUE formula; undefined where the workbook has none. */
export async function standingCatalogue(workbook: Workbook): Promise<StandingCatalogue | undefined> {
  const [cell, ...others] = await catalogueCells(workbook);
  if (!cell) return undefined;
  const at = placeOf(cell);
  const [shown] = await workbook.read([at]);
  const names = await workbook.names();
  const isNamed = names.some(
    name => name.name.toLowerCase() === 'catalogue' && name.at.sheet === at.sheet && name.at.address === at.address,
  );
  const found = { cell: at, formula: cell.formula, shown: shown!.values[0]![0]!, isNamed, others: others.map(placeOf) };
  const tables = await tablesOf(workbook, cell).catch(() => CANNOT_FOLLOW);
  if (typeof tables === 'string') return { ...found, tables: [], canBeFollowed: false, catalogue: undefined, reason: tables };
  return { ...found, tables, canBeFollowed: true, ...read(rawTablesOf(tables)) };
}
