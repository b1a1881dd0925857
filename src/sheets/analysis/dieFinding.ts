import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from './analyseReadings';
import { offText } from './diameterText';
import type { Finding } from './finding';
import type { DieReadingsCause } from './machineCause';
import { dayText } from './sinceText';

function sentence({ name, offset, since }: DieReadingsCause, unit: LengthUnit): string {
  const off = offText(offset ?? 0, unit);
  if (!since) return `Die ${name} crimps ${off} on its own.`;
  const day = dayText(since.crimp);
  if (since.isRising) return `Die ${name} has drifted since ${day} and crimps ${off} on its own by now.`;
  return `Since ${day} die ${name} crimps ${off} on its own.`;
}

/** Dies that are off by themselves, the worst first. */
export function dieFindings({ cause }: MachineReadings, unit: LengthUnit): Finding[] {
  return cause.dies
    .filter(({ finding }) => finding === 'DIE')
    .sort((a, b) => Math.abs(b.offset ?? 0) - Math.abs(a.offset ?? 0))
    .map(die => ({
      kind: 'die',
      look: 'warning',
      title: `Die ${die.name} is off`,
      sentence: sentence(die, unit),
      actions: [
        `Take die ${die.name} out of use: clean it, look at its faces, measure it. Replace it if it is worn; no dial setting makes up for a worn die.`,
        'Lock the crimper out before you change dies.',
      ],
      next: [`Crimp two of a combination that uses die ${die.name} with another die that fits, and measure.`],
      facts: [`${die.crimps.length} crimps were made with it.`],
    }));
}
