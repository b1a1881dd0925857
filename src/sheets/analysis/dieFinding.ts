import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from './analyseReadings';
import { offText, someOf } from './diameterText';
import { disagreement, onlyCombination } from './dieShares';
import type { Finding } from './finding';
import type { DieReadingsCause } from './machineCause';
import { dayText } from './sinceText';

type Disagreement = NonNullable<ReturnType<typeof disagreement>>;

/** So many combinations are named in a sentence. */
const MOST_NAMED = 3;

function sentence({ name, offset, since }: DieReadingsCause, unit: LengthUnit): string {
  const off = offText(offset ?? 0, unit);
  if (!since) return `Die ${name} crimps ${off} on its own.`;
  const day = dayText(since.crimp);
  if (since.isRising) return `Die ${name} has drifted since ${day} and crimps ${off} on its own by now.`;
  return `Since ${day} die ${name} crimps ${off} on its own.`;
}

const LOCK = 'Lock the crimper out before you change dies.';

/** Only some of what was made with a die is off: a setting that was changed is as likely. */
function settingOrDie(die: DieReadingsCause, { off, right }: Disagreement, unit: LengthUnit): Finding {
  const names = (shares: Disagreement['off']) =>
    someOf(
      shares.map(({ combination }) => combination),
      MOST_NAMED,
    );
  const largest = off.reduce((most, each) => (Math.abs(each.offset) > Math.abs(most.offset) ? each : most));
  const since = die.since ? `Since ${dayText(die.since.crimp)} ` : '';
  return {
    kind: 'die',
    look: 'warning',
    title: `Setting or die: ${names(off)}`,
    sentence: `${since}${names(off)} crimps ${offText(largest.offset, unit)} on its own, but ${names(right)}, made with the same die ${die.name}, does not: a setting that was changed is as likely as the die.`,
    actions: [
      `Was the dial of ${names(off)} changed${die.since ? ` on ${dayText(die.since.crimp)}` : ''}? Look at die ${die.name} and measure it. Change neither before you know which.`,
      LOCK,
    ],
    next: [
      `Crimp two of ${names(off)} with another die that fits, and two of ${names(right)} with die ${die.name}, and measure.`,
    ],
    facts: [`${die.crimps.length} crimps were made with it.`],
  };
}

function dieFinding(die: DieReadingsCause, unit: LengthUnit): Finding {
  const only = onlyCombination(die);
  const isSetting = only ? [`Only ${only} was made with it: its setting may be what is off. Look at its dial first.`] : [];
  return {
    kind: 'die',
    look: 'warning',
    title: `Die ${die.name}${only ? ' or its setting' : ''} is off`,
    sentence: sentence(die, unit),
    actions: [
      ...isSetting,
      `Take die ${die.name} out of use: clean it, look at its faces, measure it. Replace it if it is worn; no dial setting makes up for a worn die.`,
      LOCK,
    ],
    next: [`Crimp two of a combination that uses die ${die.name} with another die that fits, and measure.`],
    facts: [`${die.crimps.length} crimps were made with it.`],
  };
}

/** Dies that are off by themselves, the worst first. */
export function dieFindings(machine: MachineReadings, unit: LengthUnit): Finding[] {
  return machine.cause.dies
    .filter(({ finding }) => finding === 'DIE')
    .sort((a, b) => Math.abs(b.offset ?? 0) - Math.abs(a.offset ?? 0))
    .map(die => {
      const disagree = disagreement(machine, die);
      return disagree ? settingOrDie(die, disagree, unit) : dieFinding(die, unit);
    });
}
