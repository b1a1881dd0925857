import type { RawTable } from '../../../src/core/catalogue/rawTable';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { LiveWorkbook, type Rows } from './liveWorkbook';

export const FORMULA = '=HOSE.CATALOGUE(Hoses!A1:N5,Fittings!A1:M8,Crimps!A1:J6,Machines!A1:J6,Rates!A1:C7,,,Derating!A1:C4)';

const rows = (table: RawTable) => table as unknown as Rows;

/** The tree catalogue in a workbook, beside a job sheet; `more` replaces or adds sheets. */
export function standingWorkbook(more: Readonly<Record<string, Rows>> = {}): LiveWorkbook {
  return new LiveWorkbook(
    {
      Jobs: [
        ['Hose', 'Catalogue', { formula: FORMULA }],
        ['Alder DN 12', '', ''],
      ],
      Hoses: rows(treeTables.hoses),
      Fittings: rows(treeTables.fittings),
      Crimps: rows(treeTables.crimps),
      Machines: rows(treeTables.machines),
      Rates: rows(treeTables.rates),
      Derating: rows(treeTables.derating!),
      ...more,
    },
    { Catalogue: { sheet: 'Jobs', address: 'C1' } },
  );
}

/** A table as a .csv file. */
export function csvOf(table: RawTable): Uint8Array {
  const quoted = (cell: unknown) => `"${String(cell ?? '').replace(/"/g, '""')}"`;
  return new Uint8Array(Buffer.from(table.map(row => row.map(quoted).join(',')).join('\r\n')));
}
