import { CONVERTED_PLACES } from '../../core/units/decimalPlaces';
import { lengthIn } from '../../core/catalogue/lengthIn';
import { Decimal } from '../../core/units/decimal';
import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { blockOf, fixedReference } from '../../workbook/a1';
import type { UsableCatalogue } from './usableCatalogue';
import { TablePlace } from './tablePlace';

/** How a formula finds the price of a guard in the table Guards. */
export interface GuardPrices {
  /** References to the columns Guard, Size and Price per length, headings left out. */
  readonly names: string;
  readonly sizes: string | undefined;
  readonly prices: string;
  /** How many of the catalogue's unit of lengths make what the price is counted by: 1000 for mm and `per m`. */
  readonly divisor: Decimal;
  /** The unit of the price. */
  readonly unit: MeasureUnit;
  /** True where the name alone does not say which row: the size of the hose decides then. */
  needsSize(guard: string): boolean;
}

/** Where the guards' prices stand; undefined where the catalogue has no guards or no prices of them. */
export function guardPrices({ tables, ranges, catalogue }: UsableCatalogue): GuardPrices | undefined {
  if (!tables.guards) return undefined;
  const place = new TablePlace(tables.guards);
  const [name, size, price] = ['Guard', 'Size', 'Price per length'].map(heading => place.column(heading));
  const unit = measureUnit('perLength', place.unit('Price per length') ?? '');
  if (name === undefined || price === undefined || !unit) return undefined;
  const rows = Math.min(blockOf(ranges.guards!.address)!.rows, tables.guards.values.length + 20);
  const reference = (column: number) => fixedReference(place.columnRange(column, rows));
  return {
    names: reference(name),
    sizes: size === undefined ? undefined : reference(size),
    prices: reference(price),
    divisor: new Decimal(1).div(lengthIn(catalogue.units.length, new Decimal(1), unit)).toDecimalPlaces(CONVERTED_PLACES),
    unit,
    needsSize: guard => size !== undefined && place.rows('Guard', guard).length > 1,
  };
}

/** What a guard formula is about: cells of its line. */
export interface GuardCells {
  readonly guard: string;
  readonly overall: string;
  /** What the guard's size must be, where the name alone does not say which row: a formula without `=`. */
  readonly size: string | undefined;
}

/** The condition that picks the guard's row; a plain comparison, because * and ? in a name are no wildcards. */
function picked(prices: GuardPrices, { guard, size }: Omit<GuardCells, 'overall'>): string {
  const byName = `(${prices.names}=${guard})`;
  return size && prices.sizes ? `${byName}*(${prices.sizes}=${size})` : `${byName}*1`;
}

/** Price of a guard per length, without `=`; #N/A where not exactly one row of Guards has it with a price. */
export function guardPriceFormula(prices: GuardPrices, cells: Omit<GuardCells, 'overall'>): string {
  const row = picked(prices, cells);
  return `IF(SUMPRODUCT(${row}*ISNUMBER(${prices.prices}))=1,SUMPRODUCT(${row},${prices.prices}),NA())`;
}

/** Cost of a guard over the overall length, without `=`; 0 where the line has none. */
export function guardCostFormula(prices: GuardPrices, cells: GuardCells): string {
  // CUTLENGTH reads lengths that are text (27 1/2), which a spreadsheet cannot multiply.
  const length = `HOSE.CUTLENGTH(${cells.overall},0,0)`;
  return `IF(${cells.guard}="",0,${guardPriceFormula(prices, cells)}*${length}/${prices.divisor})`;
}
