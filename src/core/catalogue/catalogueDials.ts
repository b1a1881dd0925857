import { quotedText } from '../quotedText';
import type { Catalogue } from './catalogue';
import { machineDescription } from './machineDial';
import type { Note } from './note';
import { partKey } from './partName';
import type { ReadRow } from './readRows';
import { textIn } from './rowFacts';
import { machinesTable } from './tables/machinesTable';

/**
 * Whether the dials of Crimps were made for a machine: as Catalogue dials says in its row without die; where that is blank, only if Machines
 * names no other machine.
 * @throws TradeError `notFound` where no row names the machine, or where that row was left out for a problem
 */
export function catalogueDialsHold(catalogue: Catalogue, machine: string): boolean {
  const stated = machineDescription(catalogue, machine)?.catalogueDials;
  return stated === undefined ? catalogue.index.machines.size === 1 : stated === 'yes';
}

/** Notes on the cells to fill: with several machines, each must say whether the dials of Crimps are for it. */
export function catalogueDialsNotes(rows: readonly ReadRow[]): readonly Note[] {
  const machines = new Map<string, { name: string; row: number; describes: boolean; isStated: boolean }>();
  for (const row of rows) {
    const name = textIn(row, 'machine');
    if (name === undefined) continue;
    const describes = !['hose', 'fitting', 'die'].some(key => row.values[key] !== undefined || row.unread?.[key]);
    const found = machines.get(partKey(name));
    const isStated = describes && (row.values.catalogueDials !== undefined || !!row.unread?.catalogueDials);
    if (!found) machines.set(partKey(name), { name, row: row.row, describes, isStated });
    else if (describes) machines.set(partKey(name), { name, row: row.row, describes, isStated: found.isStated || isStated });
  }
  if (machines.size < 2) return [];
  return [...machines.values()]
    .filter(({ isStated }) => !isStated)
    .map(({ name, row, describes }) => ({
      sheet: machinesTable.sheet,
      row,
      column: machinesTable.fields.catalogueDials.heading,
      text: describes
        ? `Catalogue dials is blank for ${quotedText(name)}: the dials of Crimps are not used for it; enter yes or no`
        : `${quotedText(name)} has no row without die: the dials of Crimps are not used for it; add one with Catalogue dials yes or no`,
    }));
}
