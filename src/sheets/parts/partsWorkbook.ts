import { catalogueTables, TABLE_NAMES } from '../../core/catalogue/tables/catalogueTables';
import type { RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import type { ChosenTable } from './loadedCatalogue';
import { spilledBlocks, type Spilled } from './spilledBlocks';

/** What is known of the workbook when a catalogue is written into it. */
export interface PartsWorkbook {
  readonly standing: WorkbookCatalogue | undefined;
  /** Used part of the sheets that the catalogue names, and of those that a new table could go to. */
  readonly contents: ReadonlyMap<string, RangeContent | undefined>;
  /** Formulas of these sheets that fill several cells, by sheet. */
  readonly spilled: ReadonlyMap<string, readonly Spilled[]>;
  readonly sheets: readonly string[];
  readonly names: readonly { readonly name: string; readonly at: RangeAddress }[];
  /** ISO date for the copies. */
  readonly today: string;
}

/** The catalogue cannot be written, with a sentence that says why and what to do. */
export class CannotWrite extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'CannotWrite';
  }
}

const TITLES = new Set(TABLE_NAMES.map(name => catalogueTables[name].sheet.toLowerCase()));

/** Reads what a plan has to know of the workbook, as it stands now. */
export async function partsWorkbook(
  workbook: Workbook,
  standing: WorkbookCatalogue | undefined,
  chosen: readonly ChosenTable[],
  today: string,
): Promise<PartsWorkbook> {
  const [sheets, names] = await Promise.all([workbook.sheets(), workbook.names()]);
  const wanted = new Set([
    ...(standing?.tables ?? []).map(({ content }) => content.sheet),
    ...chosen.flatMap(({ loaded }) => (loaded.at ? [loaded.at.sheet] : [])),
    ...sheets.filter(sheet => TITLES.has(sheet.toLowerCase())),
  ]);
  const contents = new Map<string, RangeContent | undefined>();
  for (const sheet of wanted) contents.set(sheet, await workbook.used(sheet));
  const spilled = new Map<string, readonly Spilled[]>();
  const rewritten = new Set(
    (standing?.tables ?? []).filter(({ table }) => chosen.some(each => each.table === table)).map(({ content }) => content.sheet),
  );
  for (const sheet of rewritten) spilled.set(sheet, await spilledBlocks(workbook, contents.get(sheet)));
  return { standing, contents, spilled, sheets, names, today };
}
