import type { Catalogue, MachineEntry } from './catalogue';
import { partKey } from './partName';
import { remembered } from './remembered';
import type { CatalogueMachine } from './tables/machinesTable';

/** A recorded setting of a machine: all that makes it one is filled in. */
export type DialRecord = CatalogueMachine & {
  readonly die: string;
  readonly hose: string;
  readonly fitting: string;
  readonly dial: number;
};

const recordsOf = remembered<readonly DialRecord[]>();

/** The newest entry of each die; one that was left out for a problem hides the older ones and is no record. */
function newestOfEachDie(entries: readonly MachineEntry[]): DialRecord[] {
  const seen = new Set<string>();
  return entries.flatMap(({ die, entry }) => {
    if (seen.has(die)) return [];
    seen.add(die);
    return entry.row ? [entry.row as DialRecord] : [];
  });
}

/** A machine's recorded settings: of each hose, fitting (or pattern of fittings) and die the newest, in order of first appearance. */
export function machineRecords(catalogue: Catalogue, machine: string): readonly DialRecord[] {
  const start = `${partKey(machine)}\u001f`;
  return recordsOf(catalogue, start, () =>
    [...catalogue.index.settings].flatMap(([key, entries]) => (key.startsWith(start) ? newestOfEachDie(entries) : [])),
  );
}
