import type { CatalogueIndex, CrimpEntry, Entry, FluidEntry, GuardEntry, HoseCrimps, MachineEntry } from './catalogue';
import { rateKey } from './duplicates';
import { fluidKey, fluidNames } from './fluidName';
import { headingKey, partKey } from './partName';
import type { ReadRow } from './readRows';
import type { TableName } from './tables/catalogueTables';
import type { Crimp } from './tables/crimpsTable';
import type { Derating } from './tables/deratingTable';
import type { FluidRow } from './tables/fluidsTable';
import type { Guard } from './tables/guardsTable';
import type { CatalogueMachine } from './tables/machinesTable';

/** Key of a machine's setting. */
export const settingKey = (machine: string, hose: string, fitting: string) =>
  [machine, hose, fitting].map(partKey).join('\u001f');

function entryOf<T>(row: ReadRow): Entry<T> {
  return row.problems[0] ? { problem: row.problems[0] } : { row: row.values as T };
}

const keyOf = (row: ReadRow, field: string): string => {
  const value = row.values[field];
  return value === undefined ? '' : partKey(String(value));
};

function byName<T>(rows: readonly ReadRow[], field: string, key = partKey): Map<string, Entry<T>> {
  const named = rows.filter(row => row.values[field] !== undefined);
  return new Map(named.map(row => [key(String(row.values[field])), entryOf<T>(row)]));
}

function push<T>(groups: Map<string, T[]>, key: string, item: T): void {
  const group = groups.get(key);
  if (group) group.push(item);
  else groups.set(key, [item]);
}

function crimpsByHose(rows: readonly ReadRow[]): Map<string, HoseCrimps> {
  const groups = new Map<string, { exact: Map<string, CrimpEntry>; patterns: (CrimpEntry & { start: string })[] }>();
  for (const row of rows) {
    const hose = keyOf(row, 'hose');
    const fitting = keyOf(row, 'fitting');
    if (hose === '' || fitting === '' || fitting === '*') continue;
    let group = groups.get(hose);
    if (!group) groups.set(hose, (group = { exact: new Map(), patterns: [] }));
    const found: CrimpEntry = { fitting: String(row.values.fitting), entry: entryOf<Crimp>(row) };
    if (fitting.endsWith('*')) group.patterns.push({ ...found, start: fitting.slice(0, -1) });
    else group.exact.set(fitting, found);
  }
  for (const group of groups.values()) group.patterns.sort((a, b) => b.start.length - a.start.length);
  return groups;
}

const newestFirst = (a: MachineEntry, b: MachineEntry) => (b.date ?? -1) - (a.date ?? -1);

function machineEntries(
  rows: readonly ReadRow[],
): Pick<CatalogueIndex, 'machines' | 'settings' | 'settingPatterns' | 'descriptions'> {
  const machines = new Map<string, string>();
  const settings = new Map<string, MachineEntry[]>();
  const descriptions = new Map<string, MachineEntry[]>();
  const patterns = new Set<string>();
  for (const row of rows) {
    const machine = keyOf(row, 'machine');
    if (machine === '') continue;
    machines.set(machine, String(row.values.machine));
    const entry: MachineEntry = {
      date: row.unread?.date ? Infinity : (row.values.date as number | undefined),
      die: keyOf(row, 'die'),
      entry: entryOf<CatalogueMachine>(row),
    };
    const [hose, fitting] = [keyOf(row, 'hose'), keyOf(row, 'fitting')];
    if (hose === '' && fitting === '') push(descriptions, machine, entry);
    else push(settings, settingKey(machine, hose, fitting), entry);
    if (/[^*]\*$/.test(fitting)) patterns.add(fitting);
  }
  // Of one date and time the lower row counts: reversed, it comes first, and sorting keeps it there.
  for (const group of [...settings.values(), ...descriptions.values()]) group.reverse().sort(newestFirst);
  return { machines, settings, settingPatterns: [...patterns].sort((a, b) => b.length - a.length), descriptions };
}

function deratingByHose(rows: readonly ReadRow[]): Map<string, Entry<Derating>[]> {
  const groups = new Map<string, Entry<Derating>[]>();
  for (const row of rows) if (row.values.hose !== undefined) push(groups, keyOf(row, 'hose'), entryOf<Derating>(row));
  for (const group of groups.values()) group.sort((a, b) => (a.row?.temperature ?? 0) - (b.row?.temperature ?? 0));
  return groups;
}

const fluidEntries = (rows: readonly ReadRow[]): FluidEntry[] =>
  rows.flatMap(row => {
    const own = fluidKey(String(row.values.fluid ?? row.unread?.fluid ?? ''));
    const names = [own, ...fluidNames(String(row.values.alsoCalled ?? row.unread?.alsoCalled ?? ''))];
    const hose = partKey(String(row.values.hose ?? row.unread?.hose ?? ''));
    return own === '' ? [] : [{ names, hose, entry: entryOf<FluidRow>(row) }];
  });

function guardsByName(rows: readonly ReadRow[]): Map<string, GuardEntry[]> {
  const groups = new Map<string, GuardEntry[]>();
  for (const row of rows) {
    if (row.values.guard === undefined) continue;
    push(groups, keyOf(row, 'guard'), { size: headingKey(keyOf(row, 'size')), entry: entryOf<Guard>(row) });
  }
  return groups;
}

/** The ways into the rows that were read. */
export function catalogueIndex(tables: Readonly<Record<TableName, readonly ReadRow[]>>): CatalogueIndex {
  return {
    hoses: byName(tables.hoses, 'hose'),
    fittings: byName(tables.fittings, 'fitting'),
    crimps: crimpsByHose(tables.crimps),
    ...machineEntries(tables.machines),
    rates: byName(tables.rates, 'rate', rateKey),
    derating: deratingByHose(tables.derating),
    fluids: fluidEntries(tables.fluids),
    guards: guardsByName(tables.guards),
  };
}
