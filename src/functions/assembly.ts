import { assembly as assemblyOf } from '../core/catalogue/assembly';
import type { Catalogue } from '../core/catalogue/catalogue';
import { crimpSetup as crimpSetupOf } from '../core/catalogue/crimpSetup';
import { trialDial as trialDialOf } from '../core/catalogue/trialDial';
import { unitCost as unitCostOf } from '../core/catalogue/unitCost';
import { withCatalogue } from '../host/catalogue/withCatalogue';
import { column, optionalColumn } from '../cells/columns';
import { text } from '../cells/readers';
import { mapRows } from '../cells/rows';
import { overallReader, readQuantity, readTemperature } from './catalogueArguments';

/** The columns that say what is assembled. */
const assemblyColumns = (found: Catalogue, hose: any[][], fittingA: any[][], fittingB: any[][], overall: any[][]) =>
  [
    column('hose', hose, text),
    column('fitting A', fittingA, text),
    column('fitting B', fittingB, text),
    column('overall length', overall, overallReader(found.units)),
  ] as const;

/**
 * A dial to try on ONE trial piece of a hose and a fitting before a batch, from what is recorded of the machine. Measure that piece first; scrap it where it is out of spec. The makers’ current data come first.
 * @customfunction TRIALDIAL TRIALDIAL
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fitting Name of the fitting: one value or a column of text.
 * @param {any[][]} machine Name of the machine, as in the table Machines: one value or a column of text.
 * @returns {any[][]} Five columns: dial, low and high in digits (95 % for the next crimp; blank with fewer than two records), records used, and basis: RECORD (its own), CATALOGUE (catalogue's dial and how its records differ), SAME DIE (its records with that die, by diameter and step). #N/A with nothing to go by; #VALUE! outside the machine's scale.
 * Source: Student's t, mean ± t·s·√(1 + 1/n).
 * @example =HOSE.TRIALDIAL(Catalogue, "Alder DN 12", "Alder cone elbow DN 12", "Bench 1") gives 323, , , 1 and CATALOGUE
 */
export function trialDial(catalogue: any[][], hose: any[][], fitting: any[][], machine: any[][]): any[][] {
  return withCatalogue(catalogue, found =>
    mapRows(
      [column('hose', hose, text), column('fitting', fitting, text), column('machine', machine, text)],
      5,
      (hoseName, fittingName, machineName) => {
        const { dial, low, high, records, basis } = trialDialOf(found, hoseName, fittingName, machineName);
        return [dial, low, high, records, basis];
      },
    ),
  );
}

/**
 * What to set the crimper to for a hose and a fitting.
 * @customfunction CRIMPSETUP CRIMPSETUP
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fitting Name of the fitting: one value or a column of text.
 * @param {any[][]} [machine] Name of the machine, whose own recorded dial for that die wins; the catalogue's dial counts only where Catalogue dials in Machines says so (blank: where there is one machine only): one value or a column of text.
 * @returns {any[][]} Six columns: die, dial, crimp diameter, tolerance (unit of Crimps), insertion depth (unit of Cut-off), and whose dial it is: MACHINE (its own record), CATALOGUE, or NO DIAL with a blank dial, where the catalogue's dials are not for that machine. #N/A "no crimp data for …: do not assemble" where there is no row for the pair.
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
 * Cut length, working pressure and mass of a hose with two fittings, and OK or what is wrong with it (at a temperature, with a fluid).
 * @customfunction ASSEMBLY ASSEMBLY
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fittingA Name of the fitting at end A: one value or a column of text.
 * @param {any[][]} fittingB Name of the fitting at end B: one value or a column of text.
 * @param {any[][]} overall Overall length: one value or a column, in the unit of Fittings' Cut-off.
 * @param {any[][]} [temperature] Hottest temperature in use, for which the hose is derated: one value or a column, in the unit of Hoses' Hottest (blank = not derated).
 * @param {any[][]} [fluid] Fluid in the hose, by any of its names: one value or a column of text (blank = not checked).
 * @returns {any[][]} Four columns: cut length (unit of Cut-off), working pressure of the weakest part (blank where a rating is missing or the hose may not be so hot or cold), mass (unit of mass in Mass per length; blank where one is missing), OK or what is wrong. #N/A where a part is not in the catalogue.
 * @example =HOSE.ASSEMBLY(Catalogue, "Alder DN 12", "Alder cone straight DN 12", "Alder cone elbow DN 12", 1200) gives 1124.5, 250, 0.86225 and OK
 */
export function assembly(
  catalogue: any[][],
  hose: any[][],
  fittingA: any[][],
  fittingB: any[][],
  overall: any[][],
  temperature?: any[][],
  fluid?: any[][],
): any[][] {
  return withCatalogue(catalogue, found =>
    mapRows(
      [
        ...assemblyColumns(found, hose, fittingA, fittingB, overall),
        optionalColumn('temperature', temperature, readTemperature),
        optionalColumn('fluid', fluid, text),
      ],
      4,
      (hoseName, a, b, length, degrees, fluidName) => {
        const made = assemblyOf(found, hoseName, a, b, length, { temperature: degrees, fluid: fluidName });
        return [made.cutLength, made.workingPressure, made.mass, made.wrong.length > 0 ? made.wrong.join('; ') : 'OK'];
      },
    ),
  );
}

/**
 * Cost of one assembly: hose with its guard and scrap, fittings, labour with its share of the set-up, and their total.
 * @customfunction UNITCOST UNITCOST
 * @param {any[][]} catalogue Handle of the catalogue: the cell that holds CATALOGUE.
 * @param {any[][]} hose Name of the hose: one value or a column of text.
 * @param {any[][]} fittingA Name of the fitting at end A: one value or a column of text.
 * @param {any[][]} fittingB Name of the fitting at end B: one value or a column of text.
 * @param {any[][]} overall Overall length: one value or a column, in the unit of Fittings' Cut-off.
 * @param {any[][]} quantity Assemblies in the batch: one value or a column of whole numbers.
 * @param {any[][]} [guard] Guard over the hose, as in the table Guards (of several sizes, that of the hose's bore): one value or a column of text (blank = none).
 * @returns {any[][]} Four columns, each in the currency of the catalogue's prices: hose (with its guard), fittings (with ferrules that the crimp rows name), labour, total. #N/A names the part, price or rate that is missing, or why the assembly must not be made.
 * @example =HOSE.UNITCOST(Catalogue, "Alder DN 12", "Alder cone straight DN 12", "Alder cone elbow DN 12", 1035.5, 10) gives 8, 13, 8 and 29
 */
export function unitCost(
  catalogue: any[][],
  hose: any[][],
  fittingA: any[][],
  fittingB: any[][],
  overall: any[][],
  quantity: any[][],
  guard?: any[][],
): any[][] {
  return withCatalogue(catalogue, found =>
    mapRows(
      [
        ...assemblyColumns(found, hose, fittingA, fittingB, overall),
        column('quantity', quantity, readQuantity),
        optionalColumn('guard', guard, text),
      ],
      4,
      (hoseName, a, b, length, count, guardName) => {
        const cost = unitCostOf(found, hoseName, [a, b], length, count, guardName);
        return [cost.hose, cost.fittings, cost.labour, cost.total];
      },
    ),
  );
}
