import { assembly as assemblyOf } from '../core/catalogue/assembly';
import { crimpSetup as crimpSetupOf } from '../core/catalogue/crimpSetup';
import { findFittings } from '../core/catalogue/findFittings';
import { findHoses } from '../core/catalogue/findHoses';
import { findFitting as fittingOf, findHose as hoseOf } from '../core/catalogue/findPart';
import { partField } from '../core/catalogue/partField';
import { fittingsTable } from '../core/catalogue/tables/fittingsTable';
import { hosesTable } from '../core/catalogue/tables/hosesTable';
import { unitCost as unitCostOf } from '../core/catalogue/unitCost';
import { catalogueFromCells } from '../host/catalogue/catalogueFromCells';
import { catalogueStore, withCatalogue } from '../host/catalogue/withCatalogue';
import { answer, table } from '../host/cells/answer';
import { column, optionalColumn } from '../host/cells/columns';
import { number, text } from '../host/cells/readers';
import { mapRows } from '../host/cells/rows';
import { optionalSingle, single } from '../host/cells/singles';
import { readAngle, readQuantity, readVacuum } from './catalogueArguments';

const readLength = number({ sign: 'positive', zeroIsBlank: true, hint: 'enter a length' });
const readDiameter = number({ sign: 'positive', zeroIsBlank: true, hint: 'enter a diameter' });
const readPressure = number({ sign: 'notNegative', hint: 'enter a pressure' });
const readTemperature = number({ hint: 'enter a temperature' });

/**
 * Reads and checks the workshop's parts tables and gives a short handle made from their content, which every look-up takes first.
 * @customfunction CATALOGUE CATALOGUE
 * @param {any[][]} hoses Table of hoses with its heading row; units stand in the headings, like Bore (mm).
 * @param {any[][]} fittings Table of fittings with its heading row; the unit of its Cut-off is that of all lengths.
 * @param {any[][]} crimps Table of crimp data with its heading row; the unit of its Crimp diameter is that of tolerances, spreads, dies and steps.
 * @param {any[][]} [machines] Table of crimping machines and their own recorded dials, with its heading row (units in the headings).
 * @param {any[][]} [rates] Table of labour rates, minutes, scrap and limits, with its heading row.
 * @param {any[][]} [dies] Table of dies and the diameters they crimp to, with its heading row (units in the headings).
 * @param {any[][]} [guards] Table of guards and their prices, with its heading row (units in the headings).
 * @param {any[][]} [derating] Table of pressure factors by temperature, with its heading row (units in the headings).
 * @returns {any[][]} The handle, with units and counts; it ends "; 2 rows left out" where rows are bad or stand twice. #VALUE! names the table, heading or unit that is missing.
 * @example =HOSE.CATALOGUE(Hoses!A1:S60, Fittings!A1:Q120, Crimps!A1:N400) gives CAT-7f3a2c1e (mm, bar; 12 hoses, 30 fittings, 64 crimps)
 */
export function catalogue(
  hoses: any[][],
  fittings: any[][],
  crimps: any[][],
  machines?: any[][],
  rates?: any[][],
  dies?: any[][],
  guards?: any[][],
  derating?: any[][],
): any[][] {
  return answer(() => {
    const read = catalogueFromCells([hoses, fittings, crimps, machines, rates, dies, guards, derating]);
    catalogueStore.put(read);
    return [[read.handle]];
  });
}

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
 * What to set the crimper to for a hose and a fitting.
 * @customfunction CRIMPSETUP CRIMPSETUP
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fitting Name of the fitting: one value or a column of text.
 * @param {any[][]} [machine] Name of the machine, whose own recorded dial for that die wins: one value or a column of text.
 * @returns {any[][]} Six columns: die, dial, crimp diameter, tolerance (unit of Crimps), insertion depth (unit of Cut-off), and whose dial it is: CATALOGUE or MACHINE. #N/A "no crimp data for …: do not assemble" where there is no row for the pair.
 * @example =HOSE.CRIMPSETUP(Catalogue, "Alder DN 12", "Alder cone straight DN 12") gives D23, 320, 23.5, 0.15, 26 and CATALOGUE
 */
export function crimpSetup(catalogue: any[][], hose: any[][], fitting: any[][], machine?: any[][]): any[][] {
  return withCatalogue(catalogue, found =>
    mapRows(
      [column('hose', hose, text), column('fitting', fitting, text), optionalColumn('machine', machine, text)],
      6,
      (hoseName, fittingName, machineName) => {
        const setup = crimpSetupOf(found, hoseName, fittingName, machineName);
        return [setup.die, setup.dial, setup.crimpDiameter, setup.tolerance, setup.insertionDepth, setup.source];
      },
    ),
  );
}

/**
 * Cut length, working pressure and mass of a hose with two fittings, and OK or what is wrong with it.
 * @customfunction ASSEMBLY ASSEMBLY
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fittingA Name of the fitting at end A: one value or a column of text.
 * @param {any[][]} fittingB Name of the fitting at end B: one value or a column of text.
 * @param {any[][]} overall Overall length: one value or a column, in the unit of Fittings' Cut-off.
 * @returns {any[][]} Four columns: cut length (unit of Cut-off), working pressure of the weakest part (blank where a rating is missing), mass (blank where one is missing), OK or what is wrong. #N/A where a part is not in the catalogue.
 * @example =HOSE.ASSEMBLY(Catalogue, "Alder DN 12", "Alder cone straight DN 12", "Alder cone elbow DN 12", 1200) gives 1124.5, 250, 0.86225 and OK
 */
export function assembly(catalogue: any[][], hose: any[][], fittingA: any[][], fittingB: any[][], overall: any[][]): any[][] {
  return withCatalogue(catalogue, found =>
    mapRows(
      [
        column('hose', hose, text),
        column('fitting A', fittingA, text),
        column('fitting B', fittingB, text),
        column('overall length', overall, readLength),
      ],
      4,
      (hoseName, a, b, length) => {
        const made = assemblyOf(found, hoseName, a, b, length);
        return [made.cutLength, made.workingPressure, made.mass, made.wrong.length > 0 ? made.wrong.join('; ') : 'OK'];
      },
    ),
  );
}

/**
 * Hoses of the catalogue that suit a duty, cheapest first.
 * @customfunction FINDHOSE FINDHOSE
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} bore Smallest bore that will do (unit of Fittings' Cut-off).
 * @param {any[][]} pressure Highest pressure, surges included (unit of Hoses' Working pressure).
 * @param {any[][]} bendRadius Tightest bend of the route (unit of Fittings' Cut-off).
 * @param {any[][]} coldest Lowest temperature (unit of Hoses' Hottest).
 * @param {any[][]} hottest Highest temperature (unit of Hoses' Hottest); the table Derating applies.
 * @param {any[][]} [fluid] Fluid, as it stands in Hoses' Fluids (blank = any).
 * @param {any[][]} [vacuum] Vacuum that it must stand (unit of Working pressure), or "yes" (blank = none).
 * @returns {any[][]} Table with the header Hose, Standard, Working pressure, Bend radius, Price, Margin of pressure (what the rating at the hottest temperature is above the demand). #N/A where no hose suits, with what rules them out.
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
      bore: single('bore', bore, readDiameter),
      pressure: single('pressure', pressure, readPressure),
      bendRadius: single('bend radius', bendRadius, readLength),
      coldest: single('coldest', coldest, readTemperature),
      hottest: single('hottest', hottest, readTemperature),
      fluid: optionalSingle('fluid', fluid, text),
      vacuum: optionalSingle('vacuum', vacuum, readVacuum),
    };
    const header = ['Hose', 'Standard', 'Working pressure', 'Bend radius', 'Price', 'Margin of pressure'];
    const rows = findHoses(found, duty).map(({ hose, ratingAtHottest }) => [
      hose.hose,
      hose.standard,
      hose.workingPressure,
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
 * @param {any[][]} endForm End form, as it stands in Fittings' End form, like "24° cone" or, with the series, "24° cone L".
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

/**
 * Cost of one assembly: hose with scrap, fittings, labour with its share of the set-up, and their total.
 * @customfunction UNITCOST UNITCOST
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fittingA Name of the fitting at end A: one value or a column of text.
 * @param {any[][]} fittingB Name of the fitting at end B: one value or a column of text.
 * @param {any[][]} overall Overall length: one value or a column, in the unit of Fittings' Cut-off.
 * @param {any[][]} quantity Assemblies in the batch: one value or a column of whole numbers.
 * @returns {any[][]} Four columns, each in the currency of the catalogue's prices: hose, fittings (with ferrules that the crimp rows name), labour, total. #N/A names the part, price or rate that is missing.
 * @example =HOSE.UNITCOST(Catalogue, "Alder DN 12", "Alder cone straight DN 12", "Alder cone elbow DN 12", 1035.5, 10) gives 8, 13, 8 and 29
 */
export function unitCost(
  catalogue: any[][],
  hose: any[][],
  fittingA: any[][],
  fittingB: any[][],
  overall: any[][],
  quantity: any[][],
): any[][] {
  return withCatalogue(catalogue, found =>
    mapRows(
      [
        column('hose', hose, text),
        column('fitting A', fittingA, text),
        column('fitting B', fittingB, text),
        column('overall length', overall, readLength),
        column('quantity', quantity, readQuantity),
      ],
      4,
      (hoseName, a, b, length, count) => {
        const cost = unitCostOf(found, hoseName, [a, b], length, count);
        return [cost.hose, cost.fittings, cost.labour, cost.total];
      },
    ),
  );
}
