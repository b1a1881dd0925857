import type { Catalogue } from '../../core/catalogue/catalogue';
import type { RawTable } from '../../core/catalogue/rawTable';
import { readCatalogue, type RawTables } from '../../core/catalogue/readCatalogue';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { fixedReference, cellAddress, rangeText } from '../../workbook/a1';
import { catalogueReferences } from '../../workbook/catalogueFormula';
import { tablePlaces } from '../../workbook/tablePlaces';
import { catalogueCells, type CatalogueCell } from '../../workbook/workbookCatalogueSource';
import type { CellValue, RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import { errorSentence } from '../../workbook/errorSentence';
import { rawCell } from './rawCell';

/** A table of the workbook's catalogue. */
export interface CatalogueTable {
  readonly table: TableName;
  /** As the formula names it. */
  readonly at: RangeAddress;
  /** The used part of it. */
  readonly content: RangeContent;
  readonly raw: RawTable;
}

/** A workbook's catalogue: its cell, its tables, what they give. */
export interface WorkbookCatalogue {
  readonly cell: RangeAddress;
  readonly formula: string;
  /** What the cell shows: the handle, or an error with its sentence. */
  readonly shown: CellValue;
  /** The cell is named Catalogue, so that formulas may call it so. */
  readonly isNamed: boolean;
  /** How a formula names the cell: `Catalogue`, else `Parts!$B$5`. */
  readonly reference: string;
  /** Other CATALOGUE cells of the workbook. */
  readonly others: readonly RangeAddress[];
  /** There are several, and nobody has said which counts: this one is only proposed. */
  readonly isAsked: boolean;
  readonly tables: readonly CatalogueTable[];
  /** The formula names its tables plainly, and all of them are there. */
  readonly canBeFollowed: boolean;
  readonly catalogue: Catalogue | undefined;
  /** Why there is no catalogue. */
  readonly reason: string;
}

/** Cells of a range as a table of the catalogue. */
export function rawTableOf({ values }: Pick<RangeContent, 'values'>): RawTable {
  return values.map(row => row.map(rawCell));
}

const isWhollyBlank = (table: RawTable) => table.every(row => row.every(cell => cell === null || cell === ''));

const placeOf = ({ sheet, row, column }: CatalogueCell): RangeAddress => ({
  sheet,
  address: cellAddress({ row, column }),
});

const CANNOT_FOLLOW = 'The pane cannot read the Catalogue formula: use ranges, names or tables.';

/** The tables; a sentence where the formula cannot be followed. */
async function tablesOf(workbook: Workbook, cell: CatalogueCell): Promise<CatalogueTable[] | string> {
  const references = catalogueReferences(cell.formula, cell.sheet);
  if (!references) return CANNOT_FOLLOW;
  const places = await tablePlaces(workbook, references);
  const lost = TABLE_NAMES[places.indexOf(undefined)];
  if (lost) return `The pane cannot read the ${lost} of the Catalogue formula: use a range, a name or a table.`;
  const named = places.flatMap((at, index) => (at && TABLE_NAMES[index] ? [{ table: TABLE_NAMES[index], at }] : []));
  const contents = await workbook.read(named.map(({ at }) => at));
  return named.map((place, index) => ({ ...place, content: contents[index]!, raw: rawTableOf(contents[index]!) }));
}

/** The tables as CATALOGUE reads them: those without any filled cell are left out. */
export function rawTablesOf(tables: readonly Pick<CatalogueTable, 'table' | 'raw'>[]): RawTables {
  return Object.fromEntries(tables.filter(({ raw }) => !isWhollyBlank(raw)).map(({ table, raw }) => [table, raw]));
}

function read(tables: RawTables): Pick<WorkbookCatalogue, 'catalogue' | 'reason'> {
  try {
    return { catalogue: readCatalogue(tables), reason: '' };
  } catch (error) {
    return { catalogue: undefined, reason: errorSentence(error) };
  }
}

const isSame = (a: RangeAddress, b: RangeAddress) => a.sheet === b.sheet && a.address === b.address;

/** Under this it is remembered with the workbook which CATALOGUE cell counts. */
export const CHOSEN_CATALOGUE = 'catalogue';

/** Remembers with the workbook which of its CATALOGUE cells counts. */
export async function chooseCatalogue(workbook: Workbook, cell: RangeAddress): Promise<void> {
  await workbook.remember(CHOSEN_CATALOGUE, rangeText(cell));
}

/** The cell that counts: the one that was chosen, else the one named Catalogue, else the first. */
function cellOf(cells: readonly CatalogueCell[], chosen: string | undefined) {
  const said = chosen === undefined ? undefined : cells.find(cell => rangeText(placeOf(cell)) === chosen);
  const cell = said ?? cells[0];
  const others = cells.filter(each => each !== cell).map(placeOf);
  return cell && { cell, others, isAsked: !said && others.length > 0 };
}

/**
 * The catalogue of a workbook: the one entry for all who look parts up, price, or write parts data. Of several CATALOGUE cells the one
 * counts that somebody chose; until then the one named Catalogue, else the first, and `isAsked` says so.
 * @returns undefined where the workbook has none
 */
export async function workbookCatalogue(workbook: Workbook): Promise<WorkbookCatalogue | undefined> {
  const cells = await catalogueCells(workbook);
  const which = cellOf(cells, cells.length > 1 ? await workbook.recall(CHOSEN_CATALOGUE) : undefined);
  if (!which) return undefined;
  const { cell, others, isAsked } = which;
  const at = placeOf(cell);
  const [shown] = await workbook.read([at]);
  const names = await workbook.names();
  const isNamed = names.some(name => name.name.toLowerCase() === 'catalogue' && isSame(name.at, at));
  const reference = isNamed ? 'Catalogue' : fixedReference(at);
  const found = { cell: at, formula: cell.formula, shown: shown!.values[0]![0]!, isNamed, reference, others, isAsked };
  const tables = await tablesOf(workbook, cell).catch(() => CANNOT_FOLLOW);
  if (typeof tables === 'string') return { ...found, tables: [], canBeFollowed: false, catalogue: undefined, reason: tables };
  return { ...found, tables, canBeFollowed: true, ...read(rawTablesOf(tables)) };
}
