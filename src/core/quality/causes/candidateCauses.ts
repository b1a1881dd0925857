import type { Cause } from './cause';
import type { CrimpSeries } from './crimpSeries';
import { dieChanges, wholeDies } from './dieCauses';
import { machineChanges, wholeMachine } from './machineCauses';
import { strayCrimps } from './strayCrimps';
import type { TimeStretches } from './timeStretches';

/** Step 3: every cause that may explain the crimps; where two explain equally well the earlier in this order wins. */
export function candidateCauses(series: CrimpSeries, time: TimeStretches, scatter: number): Cause[] {
  return [
    wholeMachine(time),
    ...series.combinations.map((_, of): Cause => ({ kind: 'combination', of })),
    ...wholeDies(series, time),
    ...machineChanges(time),
    ...dieChanges(series, time),
    ...strayCrimps(series, scatter),
  ];
}
