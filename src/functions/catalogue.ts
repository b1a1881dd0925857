import { catalogueFromCells } from '../cells/catalogueFromCells';
import { catalogueStore } from '../host/catalogue/withCatalogue';
import { answer } from '../cells/answer';

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
 * @param {any[][]} [fluids] Table of fluids, their other names and the temperatures a hose may carry them at, with its heading row (units in the headings).
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
  fluids?: any[][],
): any[][] {
  return answer(() => {
    const read = catalogueFromCells([hoses, fittings, crimps, machines, rates, dies, guards, derating, fluids]);
    catalogueStore.put(read);
    return [[read.handle]];
  });
}
