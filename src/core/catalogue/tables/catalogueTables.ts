import { crimpsTable } from './crimpsTable';
import { deratingTable } from './deratingTable';
import { diesTable } from './diesTable';
import { fittingsTable } from './fittingsTable';
import { fluidsTable } from './fluidsTable';
import { guardsTable } from './guardsTable';
import { hosesTable } from './hosesTable';
import { machinesTable } from './machinesTable';
import { ratesTable } from './ratesTable';

/** The tables of a catalogue, in the order of CATALOGUE's arguments; the first three are required. */
export const catalogueTables = {
  hoses: hosesTable,
  fittings: fittingsTable,
  crimps: crimpsTable,
  machines: machinesTable,
  rates: ratesTable,
  dies: diesTable,
  guards: guardsTable,
  derating: deratingTable,
  fluids: fluidsTable,
} as const;

export type TableName = keyof typeof catalogueTables;
export const TABLE_NAMES = Object.keys(catalogueTables) as TableName[];
export const REQUIRED_TABLES: readonly TableName[] = ['hoses', 'fittings', 'crimps'];
