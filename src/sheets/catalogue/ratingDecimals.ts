import type { Catalogue } from '../../core/catalogue/catalogue';
import { partKey } from '../../core/catalogue/partName';
import { remembered } from '../../core/catalogue/remembered';
import { Decimal } from '../../core/units/decimal';
import { isStated, ratedDown, ratingPlaces } from '../table/ratedDown';

const decimals = remembered<{ readonly places: number | undefined }>();

function placesOf(catalogue: Catalogue): number | undefined {
  const { hoses, fittings, derating, index, units } = catalogue;
  const stated = [...hoses, ...fittings].flatMap(({ workingPressure }) =>
    workingPressure === undefined ? [] : [new Decimal(workingPressure)],
  );
  const derated = derating.flatMap(({ hose, factor }) => {
    const row = index.hoses.get(partKey(hose))?.row;
    return row ? [new Decimal(row.workingPressure).times(factor)] : [];
  });
  if ([...stated, ...derated].every(isStated)) return undefined;
  return Math.max(0, ...stated.map(pressure => ratingPlaces(pressure, units.pressure.symbol)));
}

/**
 * With how many decimals the ratings of a catalogue are read where some of them have more, since fittings are rated in another unit than
 * hoses: as many as those that somebody stated have.
 * @returns undefined where all ratings are read as they are
 */
export const ratingDecimals = (catalogue: Catalogue): number | undefined =>
  decimals(catalogue, '', () => ({ places: placesOf(catalogue) })).places;

/** A rating by the catalogue as it is read: never above what it is. */
export function readRating(catalogue: Catalogue, pressure: Decimal): Decimal {
  const places = ratingDecimals(catalogue);
  return places === undefined ? pressure : ratedDown(pressure, catalogue.units.pressure.symbol, places);
}

/** A formula's rating as it is read, without `=`: what is no number, or an error, stays what it is. */
export const readRatingFormula = (rating: string, places: number | undefined): string =>
  places === undefined ? rating : `IFERROR(ROUNDDOWN(${rating},${places}),${rating})`;
