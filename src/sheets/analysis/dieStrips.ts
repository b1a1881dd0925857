import { partKey } from '../../core/catalogue/partName';
import { gatherBy, type MachineReadings } from './analyseReadings';
import { dieOf } from './countedCrimps';
import type { JudgedCrimp } from './judgedCrimp';
import type { DieReadingsCause } from './machineCause';

/** The crimps of one die. */
export interface DieStrip {
  readonly name: string;
  readonly crimps: readonly JudgedCrimp[];
  readonly current: readonly JudgedCrimp[];
  /** undefined where dies are not told apart. */
  readonly cause: DieReadingsCause | undefined;
  /** Machine and die together; undefined where that is not known. */
  readonly offset: number | undefined;
}

/** Crimps by die, where there are two or more. */
export function dieStrips({ crimps, current, cause }: MachineReadings): readonly DieStrip[] {
  const isCurrent = new Set(current);
  const groups = gatherBy(
    crimps.filter(crimp => dieOf(crimp) !== ''),
    dieOf,
  );
  if (groups.length < 2) return [];
  return groups.map(({ name, items }) => {
    const own = cause.dies.find(die => partKey(die.name) === partKey(name));
    const machine = cause.interval ? cause.offset?.toNumber() : undefined;
    const offset = machine === undefined || own?.offset === undefined ? undefined : machine + own.offset;
    return { name, crimps: items, current: items.filter(crimp => isCurrent.has(crimp)), cause: own, offset };
  });
}
