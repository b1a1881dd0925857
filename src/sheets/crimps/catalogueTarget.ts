import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpSetup } from '../../core/catalogue/crimpSetup';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import type { CrimpTarget } from './readingWishes';

/** Digits behind the point that a converted diameter keeps. */
const PLACES = { mm: 3, in: 5 } as const;

/** A diameter of the catalogue in the measurements' unit. */
export function catalogueDiameter<T extends number | undefined>(catalogue: Catalogue, value: T, unit: LengthUnit) {
  const from = catalogue.units.diameter;
  const to = measureUnit('length', unit)!;
  const converted =
    value === undefined
      ? undefined
      : from.symbol === to.symbol
        ? new Decimal(value)
        : convertMeasure(new Decimal(value), from, to).toDecimalPlaces(PLACES[unit]);
  return converted as T extends number ? Decimal : Decimal | undefined;
}

/** The catalogue's crimp diameter, tolerance and largest spread of a hose and a fitting; throws TradeError where it has none. */
export function catalogueTarget(catalogue: Catalogue, unit: LengthUnit): (hose: string, fitting: string) => CrimpTarget {
  return (hose, fitting) => {
    const { crimpDiameter, tolerance, crimp } = crimpSetup(catalogue, hose, fitting);
    return {
      target: catalogueDiameter(catalogue, crimpDiameter, unit),
      tolerance: catalogueDiameter(catalogue, tolerance, unit),
      largestSpread: catalogueDiameter(catalogue, crimp.largestSpread, unit),
    };
  };
}
