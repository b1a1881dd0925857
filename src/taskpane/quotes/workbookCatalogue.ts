import type { Catalogue } from '../../core/catalogue/catalogue';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { TradeError } from '../../core/tradeError';
import { addressOf, sheetInFormula } from '../../host/a1';
import { catalogueFromCells } from '../../host/catalogue/catalogueFromCells';
import { callsCatalogue, catalogueReferences } from '../../host/catalogue/catalogueFormula';
import { tablePlaces } from '../../host/catalogue/tablePlaces';
import { catalogueCells, passedCell } from '../../host/catalogue/workbookCatalogueSource';
import type { RangeAddress, RangeContent, Workbook } from '../../host/workbook';
import { NothingToQuote } from './nothingToQuote';

/** The cell with the CATALOGUE formula, and what its tables hold. */
export interface WorkbookCatalogue {
  readonly at: RangeAddress;
  readonly formula: string;
  /** How a formula names the cell: `Catalogue`, else `Parts!$B$5`. */
  readonly reference: string;
  /** Ranges of the formula's arguments; a table that is left out is missing. */
  readonly ranges: Readonly<Partial<Record<TableName, RangeAddress>>>;
  readonly tables: Readonly<Partial<Record<TableName, RangeContent>>>;
  readonly catalogue: Catalogue;
}

type Cell = Pick<WorkbookCatalogue, 'at' | 'formula' | 'reference'>;

/** An address as it stands in a formula of another sheet: `'Job list'!$B$5`. */
export function fixedReference({ sheet, address }: RangeAddress): string {
  return `${sheetInFormula(sheet)}!${address.replace(/\$/g, '').replace(/([A-Z]+)(\d+)/g, '$$$1$$$2')}`;
}

async function namedCell(workbook: Workbook): Promise<Cell | undefined> {
  const named = (await workbook.names()).find(({ name }) => name.toLowerCase() === 'catalogue');
  if (!named) return undefined;
  const formula = (await workbook.read([named.at]))[0]?.formulas[0]?.[0];
  return callsCatalogue(formula) ? { at: named.at, formula, reference: named.name } : undefined;
}

async function anyCell(workbook: Workbook): Promise<Cell | undefined> {
  const [first] = await catalogueCells(workbook);
  if (!first) return undefined;
  const { sheet, row, column, formula } = first;
  const at = { sheet, address: addressOf({ row, column, rows: 1, columns: 1 }) };
  return { at, formula, reference: fixedReference(at) };
}

type Ranges = Partial<Record<TableName, RangeAddress>>;

async function rangesOf(workbook: Workbook, { at, formula }: Cell): Promise<Ranges> {
  const references = catalogueReferences(formula, at.sheet);
  if (!references) throw new NothingToQuote('The pane cannot follow the Catalogue formula: give ranges, names or tables.');
  const found = await tablePlaces(workbook, references);
  const ranges: Ranges = {};
  for (const [index, name] of TABLE_NAMES.entries()) {
    const range = found[index];
    if (range) ranges[name] = range;
    else if (range === undefined && index < found.length) {
      throw new NothingToQuote(`The pane cannot follow the ${name} of the Catalogue formula: give a range, a name or a table.`);
    }
  }
  return ranges;
}

/**
 * The catalogue of a workbook: of its cell named Catalogue, else of the first CATALOGUE formula.
 * @throws NothingToQuote where there is none, or its tables cannot be read
 */
export async function workbookCatalogue(workbook: Workbook): Promise<WorkbookCatalogue> {
  const cell = (await namedCell(workbook)) ?? (await anyCell(workbook));
  if (!cell) {
    throw new NothingToQuote('No parts data: no cell of this workbook holds =HOSE.CATALOGUE(…). Prices come from its tables.');
  }
  const ranges = await rangesOf(workbook, cell);
  const found = TABLE_NAMES.filter(name => ranges[name]);
  const contents = await workbook.read(found.map(name => ranges[name]!));
  const tables = Object.fromEntries(found.map((name, index) => [name, contents[index]!]));
  try {
    const cells = TABLE_NAMES.map(name => tables[name]?.values.map(row => row.map(passedCell)) ?? null);
    return { ...cell, ranges, tables, catalogue: catalogueFromCells(cells) };
  } catch (error) {
    if (error instanceof TradeError) throw new NothingToQuote(`The catalogue cannot be read: ${error.message}.`);
    throw error;
  }
}
