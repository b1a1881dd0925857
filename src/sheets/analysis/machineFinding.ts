import { calibrationTurns } from '../../core/crimp/calibrationTurns';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from './analyseReadings';
import { deviationText, offText, sizeText } from './diameterText';
import type { Finding } from './finding';
import { dayText } from './sinceText';

const HANDS = 'Keep hands and loose parts out of the crimper. Crimps that were rejected stay rejected.';

/** Turns of the calibration screw for an offset of the machine. */
function turnsText({ cause, facts }: MachineReadings, unit: LengthUnit): string {
  const { perTurn } = facts('');
  const offset = cause.offset!;
  const way = offset.isNegative() ? 'looser' : 'tighter';
  const rest = `The machine’s manual says which way. Check again with one trial crimp.`;
  if (!perTurn) {
    const amount = sizeText(offset, unit);
    return `Turn the calibration screw so that it crimps ${amount} ${way}. Enter its change per turn (Limits and machine) to get turns. ${rest}`;
  }
  const turns = calibrationTurns(offset, perTurn.value).abs().toDecimalPlaces(2);
  return `Turn the calibration screw ${turns} turns ${way} (${perTurn.value} ${unit} a turn, ${perTurn.from}). ${rest}`;
}

/** Where the machine's offset lies; none where that is not known. */
export function intervalText({ cause }: MachineReadings, unit: LengthUnit): string[] {
  if (!cause.interval) return [];
  const [low, high] = cause.interval;
  // Ends that read alike are told with one digit more.
  const isNarrow = deviationText(low, unit).replace('+', '') === deviationText(high, unit).replace('+', '');
  const signed = (value: number) => `${deviationText(value, unit, isNarrow).replace('+', '')} ${unit}`;
  return [`Machine offset: between ${signed(low)} and ${signed(high)} (95 %, ${cause.crimps} crimps).`];
}

function headline(machine: MachineReadings, unit: LengthUnit, isAlone: boolean): string {
  const { cause, die } = machine;
  const off = offText(cause.offset!, unit);
  const action = cause.off.includes('MACHINE OR DIE') ? `machine or die ${die}` : 'recalibrate';
  const { since, before } = cause;
  if (!since) return `${isAlone ? 'All combinations crimp' : 'The whole machine crimps'} ${off}: ${action}.`;
  const day = dayText(since.crimp);
  const was = before === undefined ? '' : ` (before: ${deviationText(before, unit)} ${unit})`;
  if (since.isRising) return `The machine has drifted since ${day} and crimps ${off} by now: ${action}.`;
  return `Since ${day} the whole machine crimps ${off}${was}: ${action}.`;
}

/** The machine that is off now. */
export function machineFinding(machine: MachineReadings, unit: LengthUnit, isAlone: boolean): Finding {
  const { cause, die, combinations } = machine;
  const isDie = cause.off.includes('MACHINE OR DIE');
  const settings = combinations.some(each => each.cause.finding === 'OWN SETTING');
  const { since } = cause;
  return {
    kind: 'machine',
    look: 'warning',
    title: isDie ? 'The machine or its die is off' : 'The machine is off',
    sentence: headline(machine, unit, isAlone),
    actions: [
      ...(isDie ? [`All were made with die ${die}: measure one combination with another die before you recalibrate.`] : []),
      turnsText(machine, unit),
      ...(settings ? ['Recalibrate first. The dial changes assume that the machine offset is gone.'] : []),
      ...(since?.isRising ? ['A machine that drifts goes on: look for wear, play or warm oil, and check it more often.'] : []),
      ...(since && !since.isRising ? [`Look up what happened on ${dayText(since.crimp)}: repair, other dies, a knock.`] : []),
      HANDS,
    ],
    next: ['One trial crimp of a combination you know well; then write the check down under Bench › Machine.'],
    facts: intervalText(machine, unit),
  };
}
