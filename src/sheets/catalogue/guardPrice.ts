import { findGuard } from '../../core/catalogue/findGuard';
import { lengthPer } from '../../core/catalogue/lengthPer';
import type { Guard } from '../../core/catalogue/tables/guardsTable';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { fixedReference } from '../../workbook/a1';
import { TablePlace } from './tablePlace';
import { TextNumbers } from './textNumbers';
import type { UsableCatalogue } from './usableCatalogue';

/** Where the price of a guard stands. */
export interface GuardPrice {
  readonly guard: Guard;
  /** Price per length as a formula without `=`, by the cell that names the guard; #N/A where it names another one, or without a price. */
  readonly formula: (name: string) => string;
  /** The unit of the price. */
  readonly unit: MeasureUnit;
  /** How many of the catalogue's unit of lengths make what the price is counted by: 1000 for mm and `per m`. */
  readonly divisor: Decimal;
}

/** The guard that UNITCOST takes for a hose, with the cells of its row; undefined where the table does not say which it is. */
export function guardPrice({ tables, catalogue }: UsableCatalogue, name: string, hose: Hose): GuardPrice | undefined {
  if (!tables.guards) return undefined;
  const { length } = catalogue.units;
  const place = new TablePlace(tables.guards);
  const [names, prices] = [place.column('Guard'), place.column('Price per length')];
  const unit = measureUnit('perLength', place.unit('Price per length') ?? '');
  if (names === undefined || prices === undefined || !unit) return undefined;
  try {
    const guard = findGuard(catalogue, name, hose);
    const { row } = catalogue.rows.guards.find(({ values }) => values === guard)!;
    const at = (column: number) => fixedReference(place.cell(row - 1, column));
    const [named, cell] = [at(names), at(prices)];
    const price = new TextNumbers('guards', tables.guards).formula(cell, row - 1, prices);
    return {
      guard,
      formula: called =>
        price === cell ? `IF((${named}=${called})*ISNUMBER(${cell}),${cell},NA())` : `IF(${named}=${called},${price},NA())`,
      unit,
      divisor: new Decimal(1).div(lengthPer(length, new Decimal(1), unit)).toDecimalPlaces(9),
    };
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}
