import type { Workbook } from '../../workbook/workbook';
import { today } from '../../sheets/table/today';
import type { MachineReadings } from '../../sheets/analysis/analyseReadings';
import { dialMove } from '../../sheets/analysis/dialMove';
import { AcceptDial } from '../controls/AcceptDial';
import type { DialProposal } from '../../sheets/machines/dialProposal';

interface Props {
  readonly workbook: Workbook;
  readonly machine: MachineReadings;
}

/** Dials that the finding asks for, of combinations whose machine, hose and coupling the sheet names. */
function dialProposals(machine: MachineReadings, day: string): readonly DialProposal[] {
  return machine.combinations.flatMap((combination): DialProposal[] => {
    const newest = combination.counted.at(-1);
    if (combination.cause.finding !== 'OWN SETTING' || !newest) return [];
    const { hose, fitting, die } = newest;
    const move = dialMove(machine, combination);
    if (!('to' in move) || machine.machine === '' || hose === '' || fitting === '') return [];
    return [{ machine: machine.machine, die, hose, fitting, dial: move.to, date: day, note: 'from the analysis of readings' }];
  });
}

const TRY_FIRST = 'Try it on one trial piece and measure: record it once that is in spec.';
const RECALIBRATE_FIRST = 'Recalibrate the machine first, then try this dial on one trial piece.';

/** The dials that an analysis asks for, each to be recorded in Machines after a look at old and new. */
export function SuggestedDials({ workbook, machine }: Props) {
  const caution = !machine.cause.off.some(each => each.startsWith('MACHINE')) ? TRY_FIRST : RECALIBRATE_FIRST;
  return dialProposals(machine, today()).map(proposal => (
    <AcceptDial
      key={`${proposal.hose} ${proposal.fitting} ${proposal.die} ${proposal.dial}`}
      workbook={workbook}
      proposal={proposal}
      label={`Record dial ${proposal.dial} for ${proposal.hose} with ${proposal.fitting} …`}
      caution={caution}
    />
  ));
}
