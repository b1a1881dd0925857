import type { LengthUnit } from '../../core/units/lengthUnit';
import { gatherBy, type MachineReadings } from './analyseReadings';
import { deviationText } from './diameterText';
import type { DoubtfulCrimp, Finding } from './finding';
import type { JudgedCrimp } from './judgedCrimp';
import { rejectedOf } from './sinceLastChange';
import { dayText } from './sinceText';

const crimpsText = (count: number) => (count === 1 ? '1 crimp' : `${count} crimps`);
const MOST_NAMES = 4;

/** `5 TIGHT and 7 LOOSE` */
function verdictsText(rejected: readonly JudgedCrimp[]): string {
  return gatherBy(rejected, ({ verdict }) => verdict)
    .map(({ name, items }) => `${items.length} ${name}`)
    .join(', ');
}

/** From when the crimps are that count as made since the last change. */
function fromText({ cause, counts }: MachineReadings): string {
  if (cause.since) return ` since ${dayText(cause.since.crimp)}`;
  return counts.epoch && !counts.epoch.isBlind ? ` since ${counts.epoch.from}` : '';
}

/** Crimps that were rejected since the last change; undefined where there are none. */
export function rejectedFinding(machine: MachineReadings): Finding | undefined {
  const rejected = rejectedOf(machine.current);
  if (rejected.length === 0) return undefined;
  const worst = gatherBy(rejected, ({ combination }) => combination).sort((a, b) => b.items.length - a.items.length);
  const names = worst.slice(0, MOST_NAMES).map(({ name, items }) => `${name} ${items.length}`);
  const more = worst.length > MOST_NAMES ? `, and ${worst.length - MOST_NAMES} more combinations` : '';
  const oval = rejected.filter(({ verdict }) => verdict === 'OVAL').length;
  const isFound = machine.cause.off.length > 0;
  return {
    kind: 'rejected',
    look: 'warning',
    title: 'Rejected crimps',
    sentence: `${rejected.length} of the ${crimpsText(machine.current.length)}${fromText(machine)} ${rejected.length === 1 ? 'is' : 'are'} rejected (${verdictsText(rejected)})${isFound ? '.' : ', and nothing that is off on average explains it.'}`,
    actions: [
      ...(oval > 0 ? ['OVAL: check the dies and how hose and ferrule sit in them. The dial cannot make a crimp round.'] : []),
      ...(rejected.length > oval && !isFound
        ? ['Look at what makes single crimps differ: caliper, hose and ferrule lots, insertion, dies that do not close evenly.']
        : []),
      'Rejected crimps stay rejected: scrap them unless the maker allows crimping again.',
    ],
    next: isFound ? [] : [`Crimp and measure three more of ${worst[0]!.name}.`],
    facts: [`By combination: ${names.join(', ')}${more}.`],
  };
}

/** Crimps with a reading that does not belong to them, and those that no cause explains. */
export function doubtfulFinding({ cause, counts }: MachineReadings, unit: LengthUnit): Finding | undefined {
  const strays = counts.strays.map(({ crimp, reading, others }): DoubtfulCrimp => {
    const cell = crimp.cells[reading]?.address;
    const where = `Row ${crimp.row}, ${crimp.combination}`;
    return {
      crimp,
      sentence: `${where}: reading ${reading + 1} is ${crimp.readings[reading]!} (${cell ? `cell ${cell}, ` : ''}the others are about ${others.toFixed(unit === 'mm' ? 2 : 4)} ${unit}). A slip of the caliper or the pen?`,
    };
  });
  const aside = cause.setAside.map(({ crimp, offset }): DoubtfulCrimp => ({
    crimp,
    sentence: `Row ${crimp.row}, ${crimp.combination}: ${deviationText(offset, unit)} ${unit} from what machine, die and the crimps around it suggest; no cause explains it.`,
  }));
  const all = [...strays, ...aside];
  if (all.length === 0) return undefined;
  return {
    kind: 'doubtful',
    look: 'info',
    title: 'Single crimps that do not fit',
    sentence: `${crimpsText(all.length)} ${all.length === 1 ? 'is' : 'are'} set aside while causes are looked for; ${all.length === 1 ? 'it still counts' : 'they still count'} as made.`,
    actions: [
      'Look at each piece and at what was written down. Correct the sheet where a number is wrong; leave out for good what was never a reading.',
    ],
    next: ['Measure these pieces again if they are still there.'],
    facts: [],
    doubtful: all,
  };
}
