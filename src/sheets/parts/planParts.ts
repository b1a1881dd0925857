import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { withTables } from '../../workbook/catalogueFormula';
import type { Change, RangeAddress } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { datedSheetName } from '../print/freeSheetName';
import { cataloguePlace } from './cataloguePlace';
import { datedCopy } from './datedCopy';
import type { ChosenTable } from './loadedCatalogue';
import { CannotWrite, type PartsWorkbook } from './partsWorkbook';
import { planTable } from './planTable';
import type { TablePlan } from './tablePlan';

/** Everything that will be written, in an order that leaves nothing half-written. */
export interface PartsPlan {
  /** Dated sheets with the old values, one a sheet that is rewritten; first of all. */
  readonly copies: readonly { readonly sheet: string; readonly of: string; readonly changes: readonly Change[] }[];
  readonly tables: readonly TablePlan[];
  /** The Catalogue cell and its name, last of all. */
  readonly finish: readonly Change[];
  /** Sheets that come new, copies among them. */
  readonly newSheets: readonly string[];
  /** Where the Catalogue cell stands or will. */
  readonly cell: RangeAddress;
  /** The formula that stood there; undefined where none did. */
  readonly formulaBefore: string | undefined;
  /** What the user has to agree to. */
  readonly overwrites: readonly string[];
  /** What will be done, a sentence each. */
  readonly message: readonly string[];
}

function copiesOf(tables: readonly TablePlan[], { contents, today }: PartsWorkbook, taken: string[]): PartsPlan['copies'] {
  const rewritten = [...new Set(tables.filter(({ isNew, changes }) => !isNew && changes.length > 0).map(({ sheet }) => sheet))];
  return rewritten.flatMap(of => {
    const content = contents.get(of);
    if (!content) return [];
    const sheet = datedSheetName(of, taken, today);
    taken.push(sheet);
    return [{ sheet, of, changes: datedCopy(content, sheet) }];
  });
}

/** Places of all tables after writing, in the order of CATALOGUE's arguments. */
function placesOf(tables: readonly TablePlan[], standing: WorkbookCatalogue | undefined): (RangeAddress | undefined)[] {
  const places = new Map<TableName, RangeAddress>((standing?.tables ?? []).map(({ table, at }) => [table, at]));
  for (const { table, reads } of tables) places.set(table, reads);
  return TABLE_NAMES.map(name => places.get(name));
}

/**
 * Plans how the chosen tables get into the workbook: tables that stand are rewritten in place, others get sheets of their own, ranges of
 * the workbook are read where they stand; then the Catalogue cell reads them all.
 * @throws CannotWrite where something stands in the way
 */
export function planParts(chosen: readonly ChosenTable[], workbook: PartsWorkbook): PartsPlan {
  const { standing, sheets } = workbook;
  if (standing && !standing.canBeFollowed) {
    const { sheet, address } = standing.cell;
    throw new CannotWrite(
      `The CATALOGUE formula in ${sheet}!${address} calculates its tables, so it cannot be known which cells to rewrite. Enter plain ranges there, then load again.`,
    );
  }
  const taken = [...sheets];
  const tables = chosen.map(each => planTable(each, workbook, taken));
  const copies = copiesOf(tables, workbook, taken);
  const formula = withTables(placesOf(tables, standing), standing?.formula);
  const place = cataloguePlace(workbook, formula, taken);
  const written = tables.filter(({ changes }) => changes.length > 0);
  return {
    copies,
    tables,
    finish: place.changes,
    cell: place.cell,
    formulaBefore: standing?.formula,
    newSheets: [
      ...copies.map(({ sheet }) => sheet),
      ...written.filter(({ isNew }) => isNew).map(({ sheet }) => sheet),
      ...place.newSheets,
    ],
    overwrites: [...tables.flatMap(({ overwrites }) => overwrites), ...place.overwrites],
    message: [
      ...copies.map(({ sheet, of }) => `Old values of ${of} are copied to the new sheet ${sheet}.`),
      ...tables.flatMap(({ message }) => message),
      ...place.message,
    ],
  };
}
