import { quotedText } from '../quotedText';
import { TradeError } from '../tradeError';
import type { Catalogue, MachineEntry } from './catalogue';
import { settingKey } from './catalogueIndex';
import { partKey } from './partName';
import { problemSentence } from './problem';
import type { CatalogueMachine } from './tables/machinesTable';

/** The newest setting for the die, under the fitting's own name, else under the longest pattern that it begins like. */
function newest({ index }: Catalogue, machine: string, die: string, hose: string, fitting: string): MachineEntry | undefined {
  const wanted = partKey(fitting);
  const patterns = index.settingPatterns.filter(pattern => wanted.startsWith(pattern.slice(0, -1)));
  for (const name of [fitting, ...patterns]) {
    const found = index.settings
      .get(settingKey(machine, hose, name))
      ?.find(entry => entry.die === die || (entry.die === '' && entry.entry.problem));
    if (found) return found;
  }
  return undefined;
}

function requireMachine(catalogue: Catalogue, machine: string): void {
  if (catalogue.index.machines.has(partKey(machine))) return;
  const advice = 'check its name, or add it to the table Machines';
  throw new TradeError('notFound', 'machine', `${quotedText(machine)} is not in the catalogue`, advice);
}

/**
 * A machine's own recorded dial for a die with a hose and a fitting: the newest counts, that of the fitting itself before that of a pattern.
 * @returns undefined where the machine has none of its own
 * @throws TradeError `notFound` where no row names the machine, or where the newest recorded row was left out for a problem
 */
export function machineDial(
  catalogue: Catalogue,
  machine: string,
  die: string,
  hose: string,
  fitting: string,
): CatalogueMachine | undefined {
  requireMachine(catalogue, machine);
  const found = newest(catalogue, machine, partKey(die), hose, fitting);
  if (found?.entry.problem) {
    const received = `${quotedText(machine)} has a recorded setting that was left out of the catalogue`;
    throw new TradeError('notFound', 'machine', received, problemSentence(found.entry.problem));
  }
  return found?.entry.row;
}

/**
 * The row that describes a machine (step, per turn, dial's limits): the newest of those for the die, else of those for any die.
 * @throws TradeError as machineDial
 */
export function machineDescription(catalogue: Catalogue, machine: string, die?: string): CatalogueMachine | undefined {
  requireMachine(catalogue, machine);
  const entries = catalogue.index.descriptions.get(partKey(machine));
  const found =
    (die === undefined ? undefined : entries?.find(entry => entry.die === partKey(die))) ??
    entries?.find(entry => entry.die === '');
  if (found?.entry.problem) {
    const received = `${quotedText(machine)} has a row that was left out of the catalogue`;
    throw new TradeError('notFound', 'machine', received, problemSentence(found.entry.problem));
  }
  return found?.entry.row;
}
