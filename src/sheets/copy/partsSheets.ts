import { overlap, type Block } from '../../workbook/a1';
import { catalogueReferences } from '../../workbook/catalogueFormula';
import { tablePlaces } from '../../workbook/tablePlaces';
import type { Workbook } from '../../workbook/workbook';
import { headingRow, tableOfSheet } from '../catalogue/guessTable';
import { isPartsPrice, readsAsParts, type HeadedRows } from '../catalogue/readsAsParts';
import { rawTableOf } from '../catalogue/workbookCatalogue';
import { isDatedAfter, undatedName } from '../print/freeSheetName';
import { oneLine } from '../table/cellRuns';
import type { SourceSheet, SourceSheets } from './sourceSheet';
import { placeKey } from './workbookCell';

/** A sheet that holds parts data. */
export interface PartsSheet {
  /** What is said beside its name. */
  readonly why: 'parts data' | 'old parts data' | 'price list';
  /** The catalogue in use reads it: it is copied only with parts data. */
  readonly isInUse: boolean;
  /** Columns of prices, their headings included. */
  readonly prices: readonly Block[];
}

const PRICE = /\bprices?\b|\beach\b/i;

/** Whether a heading is over prices, of parts or of what is sold. */
export const saysPrice = (heading: string): boolean => PRICE.test(heading);

/** Rows of a sheet in which a heading is looked for that begins no table of the trade. */
const TOP_ROWS = 30;

/** The tables of a sheet, and the row that would be the headings if the whole sheet were a table of the catalogue. */
function headedRows({ cells, tables }: SourceSheet): HeadedRows[] {
  const top = rawTableOf({ values: cells.used.values.slice(0, TOP_ROWS) });
  const row = cells.used.row + headingRow(top);
  const whole = {
    ...{ row, column: cells.used.column },
    headings: cells.used.values[row - cells.used.row]?.map(oneLine) ?? [],
  };
  const found = tables.map(({ block, headings }) => ({ row: block.row, column: block.column, headings }));
  const all = found.some(table => table.row === row) ? found : [...found, whole];
  const end = (column: number, size: number) => column + size;
  return all.map(each => {
    const below = all.filter(
      other =>
        other.row > each.row &&
        other.column < end(each.column, each.headings.length) &&
        each.column < end(other.column, other.headings.length),
    );
    return { ...each, last: Math.min(cells.lastRow, ...below.map(other => other.row - 1)) };
  });
}

function priceColumns({ row, column, last, headings }: HeadedRows): Block[] {
  return headings.flatMap((heading, across) =>
    saysPrice(heading) || isPartsPrice(heading) ? [{ row, column: column + across, rows: last - row + 1, columns: 1 }] : [],
  );
}

/** Sheets of the tables that the CATALOGUE cells name which are not in use, as those of a what-if. */
async function sheetsOfOthers(workbook: Workbook, { sheets, catalogue }: SourceSheets): Promise<string[]> {
  const found: string[] = [];
  for (const at of catalogue?.others ?? []) {
    const [content] = await workbook.read([at]);
    const references = catalogueReferences(content!.formulas[0]![0]!, at.sheet);
    const places = references ? await tablePlaces(workbook, references) : [];
    found.push(...places.flatMap(place => (place && sheets.has(place.sheet) ? [place.sheet] : [])));
  }
  return found;
}

function partsSheet(
  sheet: SourceSheet,
  inUse: ReadonlySet<string>,
  others: ReadonlySet<string>,
  spills: readonly Block[],
): PartsSheet | undefined {
  const name = sheet.cells.sheet;
  const rows = headedRows(sheet);
  const whole = (why: PartsSheet['why'], isInUse = false) => ({ why, isInUse, prices: rows.flatMap(priceColumns) });
  if (inUse.has(name)) return whole('parts data', true);
  if (others.has(name)) return whole('parts data');
  if ([...inUse].some(each => isDatedAfter(name, each))) return whole('old parts data');
  const isFilled = (row: number, column: number) => spills.some(block => overlap(block, { row, column, rows: 1, columns: 1 }));
  const reading = rows.flatMap(each => {
    const why = readsAsParts(sheet.cells, each, isFilled);
    return why ? [{ why, rows: each }] : [];
  });
  if (reading.length === 0) return undefined;
  const isOld = tableOfSheet(undatedName(name) ?? '') !== undefined;
  const why = isOld ? 'old parts data' : (reading.find(each => each.why === 'price list') ?? reading[0]!).why;
  return { why, isInUse: false, prices: reading.flatMap(each => priceColumns(each.rows)) };
}

/**
 * The sheets of a workbook that hold parts data: tables of its catalogues, copies of them, and what reads as a price list or as a table of
 * parts.
 */
export async function partsSheets(workbook: Workbook, known: SourceSheets): Promise<ReadonlyMap<string, PartsSheet>> {
  const { sheets, catalogue, spills } = known;
  const inUse = new Set(catalogue?.tables.map(({ at }) => at.sheet));
  const others = new Set(await sheetsOfOthers(workbook, known));
  const found = new Map<string, PartsSheet>();
  for (const [name, sheet] of sheets) {
    const own = [...spills].flatMap(([key, block]) =>
      key === placeKey({ sheet: name, row: block.row, column: block.column }) ? [block] : [],
    );
    const parts = partsSheet(sheet, inUse, others, own);
    if (parts) found.set(name, parts);
  }
  return found;
}
