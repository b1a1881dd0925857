import { partKey } from '../../core/catalogue/partName';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { UNNAMED } from '../crimps/crimpRow';
import type { MachineReadings } from './analyseReadings';
import { offText, sizeText, someOf } from './diameterText';
import type { Either } from './eitherFinding';
import type { Finding } from './finding';
import { intervalText } from './machineFinding';

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const countText = (count: number) => COUNTS[count] ?? String(count);
const THREE = 'It takes three combinations or more to tell a machine fault from a wrong setting.';
const ENOUGH = 'That should be enough if they come out like the crimps so far.';
const MOST_NAMES = 5;

/** What to measure next, in words. */
function nextText({ cause }: MachineReadings): string {
  const { crimps, combination, die, otherDie } = cause.next!;
  const more = `${countText(crimps)} more of ${combination}`;
  if (otherDie) return `${more}, with another die that fits`;
  return die === undefined ? more : `${more}, with die ${die}`;
}

const tooFew = (sentence: string, facts: readonly string[], next: readonly string[] = []): Finding => ({
  kind: 'too few',
  look: 'info',
  title: 'Too few data',
  sentence,
  actions: ['Correct nothing until then.'],
  next,
  facts,
});

/** Nothing was crimped since the change that is logged. */
function noneSince({ counts: { epoch } }: MachineReadings): Finding {
  const since = epoch?.why === 'log' ? `the change in ${epoch.change!.sheet} of ${epoch.from}` : epoch?.from;
  return tooFew(
    `Not enough crimps yet: none was made since ${since}.`,
    epoch?.why === 'log' && !epoch.from.includes(':')
      ? [
          'Crimps of that very day do not count: the log does not say whether they were made before or after it. Set “From day” to count them.',
        ]
      : [],
    ['Measure two crimps or more of three combinations.'],
  );
}

/** Too few crimps to tell anything. */
export function tooFewFinding(machine: MachineReadings, unit: LengthUnit): Finding {
  const { cause, counts } = machine;
  const combinations = machine.combinations.filter(({ counted }) => counted.length > 0);
  if (cause.refusal) return tooFew(`No finding: ${cause.refusal}.`, []);
  if (counts.counted.length === 0 && counts.epoch) return noneSince(machine);
  const soFar = cause.offset
    ? [`So far the crimps are ${offText(cause.offset, unit)} on average; nothing is corrected on that.`]
    : [];
  const start = 'Not enough crimps yet:';
  if (combinations.length === 1 && combinations[0]!.name === UNNAMED) {
    return tooFew('No column names hose and coupling, so that all crimps count as one combination.', [
      `Choose the column under “Columns read”. ${THREE}`,
      ...soFar,
    ]);
  }
  if (combinations.length < 3) {
    const missing = 3 - combinations.length;
    const more = missing === 1 ? 'one more combination' : `${countText(missing)} more combinations`;
    return tooFew(`${start} measure ${more}, two crimps or more of ${missing === 1 ? 'it' : 'each'}.`, [THREE, ...soFar]);
  }
  if (cause.crimps === combinations.length) {
    const names = someOf(
      combinations.map(({ name }) => name),
      MOST_NAMES,
    );
    return tooFew(`${start} measure a second crimp of ${names}.`, ['With one crimp each, the scatter is not known.', ...soFar]);
  }
  return tooFew(`${start} measure ${nextText(machine)}.`, [ENOUGH, ...soFar]);
}

/** Explanations that are as good contradict each other: about everything, or single combinations and dies. */
export function openFinding(
  machine: MachineReadings,
  unit: LengthUnit,
  isAllOpen: boolean,
  message: readonly Either[] = [],
): Finding {
  const { cause, combinations } = machine;
  const open = combinations
    .filter(each => each.cause.finding === 'CANNOT TELL' && !message.some(({ combination }) => combination === each))
    .map(({ name }) => name);
  const dies = cause.dies
    .filter(({ name, finding }) => finding === 'CANNOT TELL' && !message.some(({ die }) => partKey(die) === partKey(name)))
    .map(({ name }) => name);
  const parts = [
    ...(open.length > 0 ? [`the ${open.length === 1 ? 'setting' : 'settings'} of ${someOf(open, MOST_NAMES)}`] : []),
    ...(dies.length > 0 ? [`${dies.length === 1 ? 'die' : 'dies'} ${someOf(dies, MOST_NAMES)}`] : []),
  ];
  const about = isAllOpen ? 'machine, die or setting' : parts.join(' and ');
  return {
    kind: 'open',
    look: 'info',
    title: isAllOpen ? 'Cannot tell yet' : 'Open',
    sentence: `These crimps leave ${about} open: measure ${nextText(machine)}.`,
    actions: [
      isAllOpen
        ? 'More than one explanation fits as well. Correct nothing until then.'
        : 'More than one explanation fits as well. Correct nothing about these until then.',
    ],
    next: [`Measure ${nextText(machine)}. ${ENOUGH}`],
    facts: [
      ...(cause.explanations.length > 1 ? [`What fits about as well: ${cause.explanations.join('; or ')}.`] : []),
      ...(isAllOpen ? [] : intervalText(machine, unit)),
    ],
  };
}

/** Two groups of crimps at the same time, which nothing in the sheet tells apart. */
export function mixedFinding({ machine, cause }: MachineReadings, unit: LengthUnit): Finding {
  const apart = sizeText(cause.mixed!.apart, unit);
  const where = machine === '' ? 'no column names the machine' : `all are said to be of ${machine}`;
  return {
    kind: 'mixed',
    look: 'warning',
    title: 'Two machines in one list?',
    sentence: `The crimps lie in two groups ${apart} apart, at the same time and within the same combinations; ${where}. Were they made on two machines?`,
    actions: [
      'If so, add a column Machine and name the machine of each crimp; then each is judged by itself. Two sets of dies or two calipers look the same: name those.',
      'Correct nothing until that is clear.',
    ],
    next: ['Crimp three of one combination on each machine and measure them with one caliper.'],
    facts: [],
  };
}

/** The machine was changed, but nothing tells which crimps were made since. */
export function blindFinding({ counts: { epoch } }: MachineReadings): Finding {
  const what =
    epoch!.why === 'log'
      ? `${epoch!.change!.sheet} has a change of the machine on ${epoch!.from}`
      : `Only crimps from ${epoch!.from} on are to count`;
  return {
    kind: 'blind',
    look: 'warning',
    title: 'Before or after?',
    sentence: `${what}, but the crimps have no dates: all of them are counted, those before it, too.`,
    actions: ['Write the dates into a column Date, or select only the rows made since. Correct nothing until then.'],
    next: [],
    facts: [],
  };
}
