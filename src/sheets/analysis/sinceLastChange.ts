import { partKey } from '../../core/catalogue/partName';
import { isRejected } from '../crimps/judgeCrimpRow';
import { dieOf } from './countedCrimps';
import type { JudgedCrimp } from './judgedCrimp';
import type { ChangeSince, MachineReadingsCause } from './machineCause';

const isBefore = (crimp: JudgedCrimp, since: ChangeSince | undefined) =>
  since?.crimp.date !== undefined &&
  crimp.date !== undefined &&
  (crimp.date < since.crimp.date || (crimp.date === since.crimp.date && crimp.row < since.crimp.row));

/** The crimps made since the last change of the machine and of their die. */
export function sinceLastChange(crimps: readonly JudgedCrimp[], { since, dies }: MachineReadingsCause): readonly JudgedCrimp[] {
  const ofDie = new Map(dies.map(die => [partKey(die.name), die.since]));
  return crimps.filter(crimp => !isBefore(crimp, since) && !isBefore(crimp, ofDie.get(partKey(dieOf(crimp)))));
}

/** Those of some crimps that must not be used. */
export const rejectedOf = (crimps: readonly JudgedCrimp[]): readonly JudgedCrimp[] =>
  crimps.filter(({ verdict }) => isRejected(verdict));
