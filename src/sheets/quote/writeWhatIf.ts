import { partKey } from '../../core/catalogue/partName';
import type { Workbook } from '../../workbook/workbook';
import { freeSheetName } from '../print/freeSheetName';
import { NothingToQuote } from '../catalogue/nothingToQuote';
import { PRICED_TABLES, type PricedTable } from '../catalogue/pricedTables';
import { copyName, raisedTable, type RaisedTable } from './raisedTable';
import { quotesOfWorkbook, type ReadQuote } from './readQuote';
import { RiseCells, type Rises } from './riseCells';
import { plainHoseCost } from './plainHose';
import { RAISED_HANDLE } from './whatIfComparison';
import { whatIfSheet } from './whatIfSheet';
import { usableCatalogue, type UsableCatalogue } from '../catalogue/usableCatalogue';
import { chooseCatalogue, workbookCatalogue } from '../catalogue/workbookCatalogue';
import { PLAIN_MONEY } from '../catalogue/currencyFormat';
import { priceFormat } from '../catalogue/priceFormat';

/** What a what-if can be about: families of hose, and quotes. */
export interface WhatIfSources {
  readonly families: readonly string[];
  readonly hasGuards: boolean;
  readonly quotes: readonly ReadQuote[];
}

/** Families of the catalogue's hoses, in order of first appearance. */
function familiesOf({ catalogue }: UsableCatalogue): readonly string[] {
  return [...new Map(catalogue.hoses.map(({ family }) => [partKey(family), family])).values()];
}

/** Looks for families and quotes. */
export async function whatIfSources(workbook: Workbook): Promise<WhatIfSources> {
  const found = await usableCatalogue(workbook);
  const quotes = await quotesOfWorkbook(workbook);
  return { families: familiesOf(found), hasGuards: found.catalogue.guards.length > 0, quotes };
}

/** The catalogue with the rise: its handle, and the guards where their copy stands. */
function raised(found: UsableCatalogue, copies: Readonly<Partial<Record<PricedTable, RaisedTable>>>): UsableCatalogue {
  const { guards } = found.tables;
  const copy = guards && copies.guards;
  const moved = copy ? { guards: { ...guards, sheet: copy.range.sheet, row: 0, column: 0 } } : {};
  return { ...found, reference: RAISED_HANDLE, tables: { ...found.tables, ...moved } };
}

/**
 * Writes copies of the price tables with the rises, a second CATALOGUE cell, and the comparison, in one batch of new sheets.
 * @param sheets the quotes to compare
 * @param today as `2026-10-05`
 * @returns names of the new sheets, the comparison first
 */
export async function writeWhatIf(
  workbook: Workbook,
  rises: Rises,
  sheets: readonly string[],
  today: string,
): Promise<readonly string[]> {
  const found = await usableCatalogue(workbook);
  const quotes = (await quotesOfWorkbook(workbook)).filter(quote => sheets.includes(quote.sheet));
  if (quotes.length === 0) throw new NothingToQuote('Choose at least one quote.');
  const taken = await workbook.sheets();
  const sheet = freeSheetName('What-if', taken, today);
  const cells = new RiseCells(rises.families.length);
  const copies: Partial<Record<PricedTable, RaisedTable>> = {};
  const names = [sheet];
  for (const name of PRICED_TABLES) {
    const copy = freeSheetName(copyName(name), taken, today);
    const rise = (family: string | undefined) => (name === 'hoses' ? cells.ofHose(sheet, family) : cells.ofOthers(sheet, name));
    const table = raisedTable(found, name, copy, rise);
    if (!table) continue;
    copies[name] = table;
    names.push(copy);
  }
  const format = (await priceFormat(workbook)) ?? PLAIN_MONEY;
  const plainHose = plainHoseCost(raised(found, copies));
  const isOpen = (await workbookCatalogue(workbook))?.isAsked;
  await workbook.write(whatIfSheet({ sheet, found, rises, copies, quotes, plainHose, format, today }));
  // The second one is of our making: nobody needs to be asked which of the two counts.
  if (!isOpen) await chooseCatalogue(workbook, found.at);
  return names;
}
