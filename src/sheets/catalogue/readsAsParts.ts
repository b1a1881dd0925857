import { partKey } from '../../core/catalogue/partName';
import { proposedHeading } from '../../core/catalogue/proposedHeading';
import { KNOWN_RATES } from '../../core/catalogue/rateNames';
import type { TableSchema } from '../../core/catalogue/tableSchema';
import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { numberFromText } from '../../core/units/numberText';
import type { SheetCells } from '../table/sheetCells';
import { saysExactly } from '../table/tableColumns';
import { fieldsByWords, tableOfSheet } from './guessTable';
import { PRICED, PRICED_TABLES } from './pricedTables';

/** A row of headings, from `column` on, over the rows down to `last`. */
export interface HeadedRows {
  readonly row: number;
  readonly column: number;
  readonly last: number;
  readonly headings: readonly string[];
}

/** Whether a formula of another cell fills this one. */
type IsFilled = (row: number, column: number) => boolean;

/** Columns of lines to make or to sell, which a list of parts does not have. */
const LINES = ['quantity', 'overall', 'cutLength'] as const;

/** Headings that must be known where none but a price says that these are parts. */
const LEAST_FIELDS = 3;
/** Of the headings of a table without prices as many may be unknown: one in four. Records of crimps have more. */
const MOST_UNKNOWN = 0.25;

const isLines = (headings: readonly string[]) => headings.some(heading => LINES.some(word => saysExactly(heading, word)));

function requiredIn(table: TableName, fields: ReadonlySet<string>): boolean {
  const schema: TableSchema = catalogueTables[table];
  return Object.entries(schema.fields).every(([key, { required }]) => !required || fields.has(key));
}

/** Whether a heading is over what a part costs, in our words or in other people's. */
export function isPartsPrice(heading: string): boolean {
  return PRICED_TABLES.some(table => proposedHeading(table, heading)?.key === PRICED[table][1]);
}

const isPerLength = (heading: string) => {
  const meaning = proposedHeading('hoses', heading);
  return meaning?.key === PRICED.hoses[1] && meaning.unit !== undefined;
};

const isNumber = (value: unknown) =>
  typeof value === 'number' || (typeof value === 'string' && numberFromText(value) !== undefined);

/** A price that somebody typed: what a function looked up is no list. */
function hasTypedPrice(cells: SheetCells, { row, column, last, headings }: HeadedRows, isFilled: IsFilled): boolean {
  return headings.some((heading, across) => {
    if (!isPartsPrice(heading)) return false;
    for (let r = row + 1; r <= last; r += 1) {
      const isTyped = !cells.isComputed(r, column + across) && !isFilled(r, column + across);
      if (isTyped && isNumber(cells.value(r, column + across))) return true;
    }
    return false;
  });
}

function isPriceList(cells: SheetCells, rows: HeadedRows, isFilled: IsFilled): boolean {
  const { headings } = rows;
  const reads = PRICED_TABLES.some(table => {
    const fields = fieldsByWords(catalogueTables[table], headings);
    const [name, price] = PRICED[table];
    return fields.has(name) && fields.has(price) && (fields.size >= LEAST_FIELDS || headings.some(isPerLength));
  });
  return reads && hasTypedPrice(cells, rows, isFilled);
}

const RATE_NAMES = new Set(KNOWN_RATES.map(partKey));

function isRates(cells: SheetCells, { row, column, last, headings }: HeadedRows): boolean {
  if (!requiredIn('rates', fieldsByWords(catalogueTables.rates, headings))) return false;
  if (tableOfSheet(cells.sheet) === 'rates') return true;
  const name = headings.findIndex(heading => proposedHeading('rates', heading)?.key === 'rate');
  for (let r = row + 1; r <= last; r += 1) {
    const value = cells.value(r, column + name);
    if (typeof value === 'string' && RATE_NAMES.has(partKey(value))) return true;
  }
  return false;
}

/** Crimp data, or shares of pressure: most of the headings are known, and all that are required. */
function isUnpriced(headings: readonly string[]): boolean {
  const filled = headings.filter(heading => heading !== '');
  return (['crimps', 'derating'] as const).some(table => {
    const fields = fieldsByWords(catalogueTables[table], filled);
    const isSized = table !== 'crimps' || fields.has('crimpDiameter') || fields.has('smallestDiameter');
    return isSized && requiredIn(table, fields) && fields.size >= filled.length * (1 - MOST_UNKNOWN);
  });
}

/**
 * Whether a table that no CATALOGUE formula need name reads as parts data: as a price list or rates, or as a table without prices.
 * A list of lines with quantities or lengths is none.
 * @param isFilled by a table of a function, which `cells` does not know
 */
export function readsAsParts(cells: SheetCells, rows: HeadedRows, isFilled: IsFilled): 'price list' | 'parts data' | undefined {
  const { headings } = rows;
  if (isLines(headings)) return undefined;
  if (isPriceList(cells, rows, isFilled) || isRates(cells, rows)) return 'price list';
  const isWhole = (['hoses', 'fittings'] as const).some(table =>
    requiredIn(table, fieldsByWords(catalogueTables[table], headings)),
  );
  return isWhole || isUnpriced(headings) ? 'parts data' : undefined;
}
