import { partKey } from '../../core/catalogue/partName';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CombinationReadings, MachineReadings } from './analyseReadings';
import { dieOf } from './countedCrimps';
import { offText, sizeText } from './diameterText';
import type { Finding } from './finding';

/** A combination that alone was crimped with its die: which of the two is off cannot be told. */
export interface Either {
  readonly combination: CombinationReadings;
  readonly die: string;
  /** Beyond the machine. */
  readonly offset: number;
}

/** Share of its tolerance from which it matters. */
const MATTERS = 0.5;

/** Combinations off beyond the machine, where setting and die go together. */
export function eithers({ combinations, cause, counts }: MachineReadings): readonly Either[] {
  const openDies = new Set(cause.dies.flatMap(({ name, finding }) => (finding === 'CANNOT TELL' ? [partKey(name)] : [])));
  return combinations.flatMap((combination): Either[] => {
    const { counted, mean } = combination;
    const dies = new Set(counted.map(crimp => partKey(dieOf(crimp))));
    const [die] = dies;
    if (combination.cause.finding !== 'CANNOT TELL' || dies.size !== 1 || !openDies.has(die!) || !mean) return [];
    const isAlone = counts.counted.every(
      crimp => partKey(dieOf(crimp)) !== die || partKey(crimp.combination) === partKey(combination.name),
    );
    const offset = mean.toNumber() - (cause.offset?.toNumber() ?? 0);
    const matters = Math.abs(offset) >= MATTERS * counted[0]!.tolerance.toNumber();
    return isAlone && matters ? [{ combination, die: dieOf(counted[0]!), offset }] : [];
  });
}

/** Setting or die: what is known, and how to find out which. */
export function eitherFinding({ combination: { name }, die, offset }: Either, unit: LengthUnit): Finding {
  const way = offset < 0 ? 'looser' : 'tighter';
  return {
    kind: 'open',
    look: 'warning',
    title: `Setting or die: ${name}`,
    sentence: `${name} crimps ${offText(offset, unit)} on its own, and only it was crimped with die ${die}: its setting or that die is off.`,
    actions: [
      `No other die fits? Look at die ${die} and measure it. If it is sound, it is the setting: change the dial so that it crimps ${sizeText(offset, unit)} ${way}, crimp one trial piece and measure.`,
      'Lock the crimper out before you change dies.',
    ],
    next: [`Crimp two of ${name} with another die that fits, or two of another combination with die ${die}, and measure.`],
    facts: [],
  };
}
