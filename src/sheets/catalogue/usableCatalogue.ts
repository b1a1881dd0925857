import type { Catalogue } from '../../core/catalogue/catalogue';
import type { TableName } from '../../core/catalogue/tables/catalogueTables';
import type { RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import { workbookCatalogue } from './workbookCatalogue';
import { NothingToQuote } from './nothingToQuote';

/** A catalogue that can be read: its cell, and what its tables hold. */
export interface UsableCatalogue {
  readonly at: RangeAddress;
  readonly formula: string;
  /** How a formula names the cell: `Catalogue`, else `Parts!$B$5`. */
  readonly reference: string;
  /** Ranges of the formula's arguments; a table that is left out is missing. */
  readonly ranges: Readonly<Partial<Record<TableName, RangeAddress>>>;
  readonly tables: Readonly<Partial<Record<TableName, RangeContent>>>;
  readonly catalogue: Catalogue;
}

/**
 * The workbook's catalogue for those who cannot do without.
 * @throws NothingToQuote where there is none, or its tables cannot be read
 */
export async function usableCatalogue(workbook: Workbook): Promise<UsableCatalogue> {
  const found = await workbookCatalogue(workbook);
  if (!found) {
    throw new NothingToQuote(
      'No parts data: no cell of this workbook holds =HOSE.CATALOGUE(…). Prices come from its tables: load them under Parts › Load.',
    );
  }
  const { cell, formula, reference, tables, catalogue, canBeFollowed, reason } = found;
  if (!canBeFollowed) throw new NothingToQuote(reason);
  if (!catalogue) throw new NothingToQuote(`The catalogue cannot be read: ${reason}.`);
  return {
    ...{ at: cell, formula, reference, catalogue },
    ranges: Object.fromEntries(tables.map(({ table, at }) => [table, at])),
    tables: Object.fromEntries(tables.map(({ table, content }) => [table, content])),
  };
}
