import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CombinationReadings, MachineReadings } from './analyseReadings';
import { dialMove } from './dialMove';
import { listText, offText, sizeText } from './diameterText';
import type { Finding } from './finding';

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

/** Combinations that are off by their own setting, the worst first. */
const ownSettings = ({ combinations }: Pick<MachineReadings, 'combinations'>): readonly CombinationReadings[] =>
  combinations
    .filter(({ cause }) => cause.finding === 'OWN SETTING')
    .sort((a, b) => b.cause.correction.abs().cmp(a.cause.correction.abs()));

function stepNotes(machine: MachineReadings, combination: CombinationReadings, unit: LengthUnit): string[] {
  const move = dialMove(machine, combination);
  if ('to' in move) return [`The dial comes from ${move.step.value} ${unit} a digit, ${move.step.from}.`];
  if (move.refusal) return [];
  const step = 'the change per digit (Limits and machine, or table Machines)';
  return [`To get the next dial, enter ${move.from ? step : `the dials in a column Dial of the sheet, and ${step}`}.`];
}

/** So many settings off by the same are as likely a second machine or a die that no column names. */
const MANY = 4;
const SHARE = 0.15;
const ALIKE = 0.25;

/** Settings that are off by about the same: asked about before any dial is changed; undefined where there are not many. */
export function alikeFinding(machine: MachineReadings, unit: LengthUnit): Finding | undefined {
  const own = ownSettings(machine);
  const all = machine.combinations.filter(({ counted }) => counted.length > 0).length;
  const offsets = own.map(({ cause }) => -cause.correction.toNumber()).sort((a, b) => a - b);
  const nearOf = (middle: number) => offsets.filter(each => Math.abs(each - middle) <= ALIKE * machine.tolerance.toNumber());
  const near = offsets.map(nearOf).reduce<readonly number[]>((most, each) => (each.length > most.length ? each : most), []);
  if (near.length < MANY || near.length < SHARE * all) return undefined;
  const middle = near[Math.floor(near.length / 2)]!;
  return {
    kind: 'alike',
    look: 'warning',
    title: 'Several settings off by the same',
    sentence: `${near.length} of ${all} combinations are off by about the same, ${offText(middle, unit)}: a second machine, or a die or caliper that they share, is as likely as ${near.length} wrong dials. What do they have in common?`,
    actions: [
      'If they were crimped on another machine or with one set of dies, name machine and die in columns of their own; then each is judged by itself.',
      'Change no dial until that is clear.',
    ],
    next: [
      `Crimp two of ${own[0]!.name} on the machine and with the dies that the other combinations were made with, and measure.`,
    ],
    facts: [],
  };
}

/** The settings that are off, one finding each. */
export function settingFindings(machine: MachineReadings, unit: LengthUnit, isAlone: boolean): Finding[] {
  const own = ownSettings(machine);
  return own.map(combination => {
    const off = offText(combination.cause.correction.negated(), unit);
    const { name } = combination;
    const subject = isAlone && own.length === 1 ? `Only ${name} is off, ${off}` : `${name} is ${off} on its own`;
    return {
      kind: 'setting',
      look: 'warning',
      title: `A setting is off: ${name}`,
      sentence: `${subject}: ${settingText(machine, combination, unit)}.`,
      actions: stepNotes(machine, combination, unit),
      next: [`One trial piece of ${name} at the new dial before the batch goes on; record the dial once it is in spec.`],
      facts: [`${combination.counted.length} crimps of it count.`],
    };
  });
}

/** Why one chart of all combinations tells little; undefined where none is off on its own. */
export function mixedNote({ combinations }: Pick<MachineReadings, 'combinations'>): string | undefined {
  const off = combinations.filter(({ cause }) => cause.finding === 'OWN SETTING').map(({ name }) => name);
  if (off.length === 0) return undefined;
  const verb = off.length === 1 ? 'is off on its own and widens' : 'are off on their own and widen';
  return `${listText(off)} ${verb} these limits: look at one combination at a time.`;
}
