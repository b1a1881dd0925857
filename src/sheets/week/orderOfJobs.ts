import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { Jobs } from '../jobs/readJobs';
import { machineStep } from './machineStep';
import { orderOfWork, type OrderOfWork } from './orderOfWork';
import { workLines } from './workLines';

/** What is said about the machine before the week begins. */
export interface MachineNow {
  /** Crimper of the lines that name none; "" = the catalogue's dials. */
  readonly machine: string;
  /** Die and dial that are in it; "" = not known. */
  readonly die: string;
  readonly dial: string;
  /** Share of the tolerance that one dial for both ends may cost. */
  readonly share: Decimal;
}

/** The order of work of job lines: the one answer for the view, the cut list and the pieces. */
export function orderOfJobs(
  jobs: Pick<Jobs, 'lines' | 'catalogue'>,
  { machine, die, dial, share }: MachineNow,
  unit: LengthUnit,
): OrderOfWork {
  const isMachine = (name: string) => name.trim().toLowerCase() === machine.trim().toLowerCase();
  return orderOfWork(workLines(jobs, machine, unit), {
    share,
    step: name => machineStep(jobs.catalogue, name, unit),
    // What is in the machine is said of the one that is named above.
    inMachine: name => (isMachine(name) ? { die, dial } : { die: '', dial: '' }),
  });
}
