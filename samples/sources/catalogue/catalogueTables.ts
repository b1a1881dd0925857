import { crimpsTable } from './crimps';
import { diesTable } from './dies';
import { fittingsTable } from './fittings';
import { hosesTable } from './hoses';
import { machinesTable } from './machines';
import type { SampleTable } from './sampleTable';
import { deratingTable, fluidsTable, guardsTable, ratesTable } from './smallTables';

/** The workshop's catalogue, in the order of HOSE.CATALOGUE's arguments. */
export const catalogueTables: readonly SampleTable[] = [
  hosesTable,
  fittingsTable,
  crimpsTable,
  machinesTable,
  ratesTable,
  diesTable,
  guardsTable,
  deratingTable,
  fluidsTable,
];
