import type { Catalogue } from '../../core/catalogue/catalogue';
import type { TableName } from '../../core/catalogue/tables/catalogueTables';
import { sheetInFormula } from '../../workbook/a1';
import type { RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import { standingCatalogue } from './standingCatalogue';
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

/** An address as it stands in a formula of another sheet: `'Job list'!$B$5`. */
export function fixedReference({ sheet, address }: RangeAddress): string {
  return `${sheetInFormula(sheet)}!${address.replace(/\$/g, '').replace(/([A-Z]+)(\d+)/g, '$$$1$$$2')}`;
}

/**
 * The catalogue of a workbook: of its cell named Catalogue, else of the first CATALOGUE formula.
 * @throws NothingToQuote where there is none, or its tables cannot be read
 */
export async function workbookCatalogue(workbook: Workbook): Promise<WorkbookCatalogue> {
  const standing = await standingCatalogue(workbook);
  if (!standing) {
    throw new NothingToQuote(
      'No parts data: no cell of this workbook holds =HOSE.CATALOGUE(…). Prices come from its tables: load them under Parts › Load.',
    );
  }
  const { cell, formula, isNamed, tables, catalogue, canBeFollowed, reason } = standing;
  if (!canBeFollowed) throw new NothingToQuote(reason);
  if (!catalogue) throw new NothingToQuote(`The catalogue cannot be read: ${reason}.`);
  return {
    at: cell,
    formula,
    reference: isNamed ? 'Catalogue' : fixedReference(cell),
    ranges: Object.fromEntries(tables.map(({ table, at }) => [table, at])),
    tables: Object.fromEntries(tables.map(({ table, content }) => [table, content])),
    catalogue,
  };
}
