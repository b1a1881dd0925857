import type { RawTable } from '../../../src/core/catalogue/rawTable';

/** Temperatures of fluids in the hoses of the invented workshop (treeCatalogue); all values invented. */
export const treeFluids: RawTable = [
  ['Fluid', 'Also called', 'Hose', 'Coldest (°C)', 'Hottest (°C)', 'Note'],
  ['water-glycol', 'HFC; WG 46', null, -20, 70, 'invented'],
  ['water-glycol', null, 'Alder*', null, 65, 'invented'],
  ['Water glycol', null, 'alder dn 25', null, 60, 'invented'],
  ['mineral oil', 'HLP; HLP 46', null, null, null, 'invented'],
];
