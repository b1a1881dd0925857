import { TURN_PLACES } from '../../core/units/decimalPlaces';
import { calibrationTurns } from '../../core/crimp/calibrationTurns';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CombinationReadings, MachineReadings } from './analyseReadings';
import { dialMove } from './dialMove';
import { UNNAMED } from '../crimps/crimpRow';
import { deviationText, listText, offText, sizeText } from './diameterText';

/** What was found, in words. */
export interface FindingText {
  /** One sentence that says it all. */
  readonly headline: string;
  /** What to do and how sure it is, a sentence each. */
  readonly details: readonly string[];
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const countText = (count: number) => COUNTS[count] ?? String(count);

/** Turns of the calibration screw for an offset of the machine. */
function turnsText({ cause, facts }: MachineReadings, unit: LengthUnit): string {
  const { perTurn } = facts('');
  const offset = cause.offset!;
  const way = offset.isNegative() ? 'looser' : 'tighter';
  if (!perTurn) {
    const amount = sizeText(offset, unit);
    return `Turn the adjuster so that it crimps ${amount} ${way}; enter its change per turn (Limits and machine) to get turns.`;
  }
  const turns = calibrationTurns(offset, perTurn.value).abs().toDecimalPlaces(TURN_PLACES);
  return `Turn the adjuster ${turns} turns ${way} (${perTurn.value} ${unit} a turn, ${perTurn.from}).`;
}

const TRIAL = 'crimp one trial piece and measure';

/** What to do with the dial of a combination that is off on its own. */
function settingText(machine: MachineReadings, combination: CombinationReadings, unit: LengthUnit): string {
  const move = dialMove(machine, combination);
  const own = combination.cause.correction.negated();
  const way = own.isNegative() ? 'looser' : 'tighter';
  if ('to' in move) return `set its dial from ${move.from} to ${move.to}, ${TRIAL}`;
  if (move.refusal) return `no dial can be suggested (${move.refusal})`;
  const dial = move.from ? `change its dial from ${move.from}` : 'change its dial';
  return `${dial} so that it crimps ${sizeText(own, unit)} ${way}, ${TRIAL}`;
}

const ownSettings = ({ combinations }: MachineReadings) => combinations.filter(({ cause }) => cause.finding === 'OWN SETTING');

function stepNotes(machine: MachineReadings, unit: LengthUnit): string[] {
  const moves = ownSettings(machine).map(combination => dialMove(machine, combination));
  const texts = moves.flatMap(move => ('to' in move ? [`${move.step.value} ${unit} a digit, ${move.step.from}`] : []));
  if (texts.length > 0) return [`Reckoned with ${listText([...new Set(texts)])}.`];
  const open = moves.filter(move => !('refusal' in move));
  if (open.length === 0) return [];
  const step = 'the change per digit (Limits and machine, or table Machines)';
  const isDialled = open.every(({ from }) => from !== undefined);
  return [`To get the next dial, enter ${isDialled ? step : `the dials in a column Dial of the sheet, and ${step}`}.`];
}

function intervalText({ cause }: MachineReadings, unit: LengthUnit): string[] {
  if (!cause.interval) return [];
  const [low, high] = cause.interval;
  const isNarrow = sizeText(low, unit) === sizeText(high, unit) && low > 0 === high > 0;
  const signed = (value: number) => `${deviationText(value, unit, isNarrow).replace('+', '')} ${unit}`;
  return [`What the machine adds to all lies between ${signed(low)} and ${signed(high)} (95 %, ${cause.crimps} crimps).`];
}

function settingSentence(machine: MachineReadings, combination: CombinationReadings, unit: LengthUnit, isOnly: boolean): string {
  const own = offText(combination.cause.correction.negated(), unit);
  const subject = isOnly ? `Only ${combination.name} is off, ${own}` : `${combination.name} is ${own} of its own`;
  return `${subject}: ${settingText(machine, combination, unit)}.`;
}

function machineText(machine: MachineReadings, unit: LengthUnit): FindingText {
  const { cause, die } = machine;
  const own = ownSettings(machine);
  const off = offText(cause.offset!, unit);
  const rest = own.length === 0 ? 'All combinations crimp' : 'The whole machine crimps';
  const isDie = cause.off.includes('MACHINE OR DIE');
  const besides = own.map(combination => settingSentence(machine, combination, unit, false));
  const action = isDie ? `machine or die ${die}` : 'recalibrate';
  return {
    headline: [`${rest} ${off}: ${action}.`, ...besides].join(' '),
    details: [
      ...(isDie ? [`All were made with die ${die}: measure one combination with another die before you recalibrate.`] : []),
      turnsText(machine, unit),
      ...(own.length > 0 ? ['Recalibrate first; the dial moves are reckoned without what the machine adds.'] : []),
      ...stepNotes(machine, unit),
      ...intervalText(machine, unit),
    ],
  };
}

function notEnough(machine: MachineReadings, unit: LengthUnit): FindingText {
  const { cause, combinations } = machine;
  const soFar = cause.offset
    ? [`So far the crimps are ${offText(cause.offset, unit)} on average; nothing is corrected on that.`]
    : [];
  const start = 'Not enough crimps yet:';
  if (combinations.length === 1 && combinations[0]!.name === UNNAMED) {
    return {
      headline: 'No column names hose and coupling, so that all crimps count as one combination.',
      details: [
        'Choose the column under “Columns read”; a machine can be told from a setting only by three combinations or more.',
        ...soFar,
      ],
    };
  }
  if (combinations.length < 3) {
    const missing = 3 - combinations.length;
    const told = missing === 1 ? 'one more combination' : `${countText(missing)} more combinations`;
    return {
      headline: `${start} measure ${told}, two crimps or more of ${missing === 1 ? 'it' : 'each'}.`,
      details: ['A machine can be told from a setting only by three combinations or more.', ...soFar],
    };
  }
  if (cause.crimps === combinations.length) {
    const names = listText(combinations.map(({ name }) => name));
    return {
      headline: `${start} measure a second crimp of ${names}.`,
      details: ['One crimp of each shows no scatter.', ...soFar],
    };
  }
  return { headline: `${start} measure ${nextText(machine)}.`, details: soFar };
}

/** What to measure next, in words. */
function nextText({ cause }: MachineReadings): string {
  const { crimps, combination } = cause.next!;
  return `${countText(crimps)} more of ${combination}`;
}

/** Explanations that are as good contradict each other, for the machine or for single combinations. */
function cannotTell(machine: MachineReadings, unit: LengthUnit): FindingText {
  const open = machine.combinations.filter(({ cause }) => cause.finding === 'CANNOT TELL').map(({ name }) => name);
  const about = open.length === machine.combinations.length ? 'machine or setting' : `the setting of ${listText(open)}`;
  return {
    headline: `These crimps cannot tell about ${about} yet: measure ${nextText(machine)}.`,
    details: ['More than one explanation fits as well. Correct nothing until then.', ...intervalText(machine, unit)],
  };
}

/** The finding on one machine in words, with amounts. */
export function findingText(machine: MachineReadings, unit: LengthUnit): FindingText {
  const { cause } = machine;
  switch (cause.finding) {
    case 'NOT ENOUGH DATA':
      return notEnough(machine, unit);
    case 'CANNOT TELL':
      return cannotTell(machine, unit);
    case 'IN SPEC':
      return {
        headline: 'Machine and settings are in order: every combination is within tolerance on average.',
        details: intervalText(machine, unit),
      };
    case 'SETTING': {
      const own = ownSettings(machine);
      const sentences = own.map(combination => settingSentence(machine, combination, unit, own.length === 1));
      const right = own.length === 1 ? [] : ['The machine is right; these are off by their own setting.'];
      return {
        headline: [...right, ...sentences].join(' '),
        details: [...stepNotes(machine, unit), ...intervalText(machine, unit)],
      };
    }
    default:
      return machineText(machine, unit);
  }
}
