import { findFittings } from '../core/catalogue/findFittings';
import { findHoses } from '../core/catalogue/findHoses';
import { findFitting as fittingOf, findHose as hoseOf } from '../core/catalogue/findPart';
import { partField } from '../core/catalogue/partField';
import { fittingsTable } from '../core/catalogue/tables/fittingsTable';
import { hosesTable } from '../core/catalogue/tables/hosesTable';
import { withCatalogue } from '../host/catalogue/withCatalogue';
import { table } from '../cells/answer';
import { column } from '../cells/columns';
import { number, text } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { optionalSingle, single } from '../cells/singles';
import { lengthReader, readAngle, readTemperature, readVacuum } from './catalogueArguments';

const readPressure = number({ sign: 'notNegative', marks: 'noLength', hint: 'enter a pressure', like: '250' });

/**
 * One field of a hose from the catalogue.
 * @customfunction HOSEDATA HOSEDATA
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} part Name of the hose: one value or a column of text; case and outer blanks do not matter.
 * @param {any[][]} field Heading of the column, like "Bend radius"; case and hyphens do not matter.
 * @returns {any[][]} The field, one a row, in the catalogue's units, blank where it is empty. #N/A where there is no such hose or its row was left out.
 * @example =HOSE.HOSEDATA(Catalogue, "Alder DN 25", "bend radius") gives 300
 */
export function hoseData(catalogue: any[][], part: any[][], field: any[][]): any[][] {
  return withCatalogue(catalogue, found => {
    const key = partField(hosesTable, single('field', field, text));
    return mapRows([column('hose', part, text)], 1, name => hoseOf(found, name)[key]);
  });
}

/**
 * One field of a fitting from the catalogue.
 * @customfunction FITTINGDATA FITTINGDATA
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} part Name of the fitting: one value or a column of text; case and outer blanks do not matter.
 * @param {any[][]} field Heading of the column, like "Cut-off"; case and hyphens do not matter.
 * @returns {any[][]} The field, one a row, in the catalogue's units, blank where it is empty. #N/A where there is no such fitting or its row was left out.
 * @example =HOSE.FITTINGDATA(Catalogue, "Alder cone straight DN 12", "cut-off") gives 30
 */
export function fittingData(catalogue: any[][], part: any[][], field: any[][]): any[][] {
  return withCatalogue(catalogue, found => {
    const key = partField(fittingsTable, single('field', field, text));
    return mapRows([column('fitting', part, text)], 1, name => fittingOf(found, name)[key]);
  });
}

/**
 * Hoses of the catalogue that suit a duty, cheapest first.
 * @customfunction FINDHOSE FINDHOSE
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} bore Smallest bore that will do (unit of Fittings' Cut-off).
 * @param {any[][]} pressure Highest pressure, surges included (unit of Hoses' Working pressure).
 * @param {any[][]} bendRadius Tightest bend of the route (unit of Fittings' Cut-off).
 * @param {any[][]} coldest Lowest temperature (unit of Hoses' Hottest).
 * @param {any[][]} hottest Highest temperature (unit of Hoses' Hottest); the tables Derating and Fluids apply.
 * @param {any[][]} [fluid] Fluid, by its name in Hoses' Fluids or by any name in the table Fluids, whose temperatures apply (blank = any).
 * @param {any[][]} [vacuum] Vacuum that it must stand (unit of Working pressure), or "yes" (blank = none).
 * @returns {any[][]} Table with the header Hose, Standard, Working pressure (derated at the hottest temperature), Bend radius, Price, Margin of pressure (working pressure less the demand), cheapest first. #N/A where no hose suits, with what keeps the nearest from it.
 * @example =HOSE.FINDHOSE(Catalogue, 25, 170, 350, -30, 70) gives Hose, Standard, Working pressure, Bend radius, Price, Margin of pressure, Birch DN 25, EN 856 4SH, 380, 340, 31, 210
 */
export function findHose(
  catalogue: any[][],
  bore: any[][],
  pressure: any[][],
  bendRadius: any[][],
  coldest: any[][],
  hottest: any[][],
  fluid?: any[][],
  vacuum?: any[][],
): any[][] {
  return withCatalogue(catalogue, found => {
    const duty = {
      bore: single('bore', bore, lengthReader(found.units, 'enter a diameter')),
      pressure: single('pressure', pressure, readPressure),
      bendRadius: single('bend radius', bendRadius, lengthReader(found.units)),
      coldest: single('coldest', coldest, readTemperature),
      hottest: single('hottest', hottest, readTemperature),
      fluid: optionalSingle('fluid', fluid, text),
      vacuum: optionalSingle('vacuum', vacuum, readVacuum),
    };
    const header = ['Hose', 'Standard', 'Working pressure', 'Bend radius', 'Price', 'Margin of pressure'];
    const rows = findHoses(found, duty).map(({ hose, ratingAtHottest }) => [
      hose.hose,
      hose.standard,
      ratingAtHottest,
      hose.bendRadius,
      hose.pricePerLength,
      ratingAtHottest!.minus(duty.pressure),
    ]);
    return table([header, ...rows]);
  });
}

/**
 * Fittings of an end form that have crimp data for a hose.
 * @customfunction FINDFITTING FINDFITTING
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose, one value of text, as in the table Hoses.
 * @param {any[][]} endForm End form, as in Fittings' End form, like "24° cone" or, with the series, "24° cone L"; or a short word: JIC, ORFS, BSP, DKOL, DKOS, SAE flange.
 * @param {any[][]} [angle] Angle in degrees, 0 = straight (blank = any).
 * @returns {any[][]} Table with the header Fitting, End form, Thread, Angle, Price. #N/A where there is none.
 * @example =HOSE.FINDFITTING(Catalogue, "Alder DN 12", "24° cone", 90) gives Fitting, End form, Thread, Angle, Price, Alder cone elbow DN 12, 24° cone, M22x1.5, 90, 9
 */
export function findFitting(catalogue: any[][], hose: any[][], endForm: any[][], angle?: any[][]): any[][] {
  return withCatalogue(catalogue, found => {
    const fittings = findFittings(
      found,
      single('hose', hose, text),
      single('end form', endForm, text),
      optionalSingle('angle', angle, readAngle),
    );
    const rows = fittings.map(({ fitting, endForm: form, thread, angle: degrees, price }) => [
      fitting,
      form,
      thread,
      degrees,
      price,
    ]);
    return table([['Fitting', 'End form', 'Thread', 'Angle', 'Price'], ...rows]);
  });
}
