import { Decimal } from '../../core/units/decimal';
import { unitOfField, type CatalogueUnits } from '../../core/catalogue/catalogueUnits';
import type { Field } from '../../core/catalogue/tableSchema';
import { fittingsTable } from '../../core/catalogue/tables/fittingsTable';
import { hosesTable } from '../../core/catalogue/tables/hosesTable';
import { lengthText } from '../table/lengthText';
import { moneyText } from '../table/moneyText';
import { ratedDown } from '../table/ratedDown';
import type { Part } from './partSearch';
import { PRICES } from '../../core/catalogue/catalogueDiff';

/** One fact of a part, ready to be shown. */
export interface PartFact {
  /** Key of the field. */
  readonly field: string;
  readonly heading: string;
  readonly text: string;
}

/** What is known of a part and what is not. */
export interface PartFacts {
  readonly facts: readonly PartFact[];
  /** Headings of what the catalogue does not state. */
  readonly missing: readonly string[];
}

function numberText(key: string, value: number, symbol: string | undefined): string {
  if (PRICES.has(key)) return moneyText(value);
  return symbol === 'in' ? lengthText(new Decimal(value), symbol) : String(value);
}

function valueText(key: string, field: Field, value: string | number, units: CatalogueUnits): string {
  if (typeof value === 'string') return value;
  if (field.kind === 'angle') return value === 0 ? 'straight' : `${value}°`;
  if (field.kind === 'fraction') return `${Number((value * 100).toPrecision(12))} %`;
  const unit = unitOfField(units, field);
  if (unit && key === 'workingPressure') return `${ratedDown(new Decimal(value), unit.symbol)} ${unit.symbol}`;
  const number = numberText(key, value, unit?.symbol);
  return unit ? `${number} ${unit.symbol}` : number;
}

/** Fields of a part's table, its name left out. */
export function partFields({ kind }: Part): readonly (readonly [key: string, field: Field])[] {
  return Object.entries((kind === 'hose' ? hosesTable : fittingsTable).fields).filter(([key]) => key !== kind);
}

/** A part's data with their units, and the names of those that are missing. */
export function partFacts(part: Part, units: CatalogueUnits): PartFacts {
  const row = part.row as Readonly<Record<string, string | number | undefined>>;
  const facts: PartFact[] = [];
  const missing: string[] = [];
  for (const [key, field] of partFields(part)) {
    const value = row[key];
    if (value !== undefined) facts.push({ field: key, heading: field.heading, text: valueText(key, field, value, units) });
    else if (key !== 'note') missing.push(field.heading);
  }
  return { facts, missing };
}
