import { READ_PLACES } from '../../core/units/decimalPlaces';
import { Decimal } from '../../core/units/decimal';
import { dialStops, type DialWindow } from './dialStops';
import { dieOrder, EXACT_DIES } from './dieOrder';
import { commonDials, type WorkEnd, type WorkLine, dieKey } from './workEnd';

/** What one setting of the machine is used for: the ends of a line that are crimped with it. */
export interface WorkItem {
  readonly line: WorkLine;
  readonly ends: readonly ('A' | 'B')[];
  /** The row's own dials, where both ends are crimped at one that is not theirs: what that costs, in a sentence. */
  readonly oneDial: string | undefined;
}

/** One setting of the machine: a die and a dial. */
export interface WorkGroup {
  readonly machine: string;
  readonly die: string;
  /** Undefined where it is not known. */
  readonly dial: Decimal | undefined;
  readonly items: readonly WorkItem[];
}

/** How often the machine is set anew. */
export interface SettingCounts {
  /** Dies put in, the first among them unless it is in the machine already. */
  readonly dieLoads: number;
  /** Changes from one die to another. */
  readonly dieChanges: number;
  readonly dialChanges: number;
}

/** The order of work of a week. */
export interface OrderOfWork {
  readonly groups: readonly WorkGroup[];
  readonly counts: SettingCounts;
  /** The same in the order of the sheet. */
  readonly inSheetOrder: SettingCounts;
  /** With these dials no order has fewer die loads and, with those, fewer dial changes. */
  readonly isBest: boolean;
  /** Lines of which an end has no die: they cannot be ordered. */
  readonly unknown: readonly WorkLine[];
  /** Rows in the order in which their first end is crimped; plain hose and lines without a die last. */
  readonly rows: readonly number[];
}

/** What is said about the machines and the order. */
export interface OrderOptions {
  /** Die and dial that are in the machine now; "" = not known. */
  readonly inMachine: (machine: string) => { readonly die: string; readonly dial: string };
  /** Share of the tolerance that one dial for both ends may cost. */
  readonly share: Decimal;
  /** Change of diameter per digit of a machine, in the unit of the lines; undefined where it is not known. */
  readonly step: (machine: string) => Decimal | undefined;
}

interface Task extends DialWindow {
  readonly line: WorkLine;
  readonly ends: readonly WorkEnd[];
  readonly deviations?: (dial: Decimal) => readonly [Decimal, Decimal];
}

const dialText = (dial: Decimal | undefined) => dial?.toString() ?? '';

/** What is to be crimped of a line: both ends at once where one dial serves them. */
function tasksOf(line: WorkLine, { share, step }: OrderOptions): readonly Task[] {
  const [a, b] = line.ends;
  const common = a && b && commonDials(a, b, share, step(line.machine));
  if (common) return [{ line, ends: [a, b], ...common }];
  return line.ends.map(end => {
    const dial = end.dial ?? new Decimal(0);
    return { line, ends: [end], low: dial, high: dial, best: dial };
  });
}

const signed = (value: Decimal) => `${value.isNegative() ? '−' : '+'}${value.abs().toDecimalPlaces(READ_PLACES)}`;

/** Says what one dial costs, where it is not both ends' own. */
function oneDialSentence({ ends, deviations }: Task, dial: Decimal): string | undefined {
  const [a, b] = ends;
  if (!a || !b || !deviations || (a.dial!.eq(dial) && b.dial!.eq(dial))) return undefined;
  const off = deviations(dial);
  const about = [a, b].map(
    (end, index) =>
      `${end.end} ${end.dial!.eq(dial) ? 'on its target' : `${signed(off[index]!)} from its target`} (± ${end.tolerance})`,
  );
  return `one dial for both ends, ${dial} for ${a.dial} and ${b.dial}: ${about.join(', ')}`;
}

/** By hose, each hose once, beginning with the one that was worked on before. */
function byHose(items: readonly WorkItem[], before: string | undefined): readonly WorkItem[] {
  const hoses = [...new Set(items.map(({ line }) => dieKey(line.hose)))];
  const first = before !== undefined && hoses.includes(before) ? [before] : [];
  const order = [...first, ...hoses.filter(hose => !first.includes(hose))];
  return order.flatMap(hose => items.filter(({ line }) => dieKey(line.hose) === hose));
}

function groupsOf(machine: string, lines: readonly WorkLine[], options: OrderOptions): readonly WorkGroup[] {
  const tasks = lines.flatMap(line => tasksOf(line, options));
  const dies = [...new Set(tasks.map(({ ends }) => dieKey(ends[0]!.die)))];
  const placed = dies.flatMap(die => {
    const own = tasks.filter(({ ends }) => dieKey(ends[0]!.die) === die);
    const known = own.filter(({ ends }) => ends[0]!.dial !== undefined);
    const stops = dialStops(known);
    return own.map(task => {
      const at = known.indexOf(task);
      return { task, die, dial: at < 0 ? undefined : stops[at]! };
    });
  });
  const stops = dies.map(die => ({
    die,
    dials: [...new Set(placed.filter(each => each.die === die).map(({ dial }) => dialText(dial)))],
  }));
  let hose: string | undefined;
  return dieOrder(stops, options.inMachine(machine)).flatMap(({ die, dials }) =>
    dials.map((dial): WorkGroup => {
      const own = placed.filter(each => each.die === die && dialText(each.dial) === dial);
      const items = own.map(({ task, dial: at }) => ({
        line: task.line,
        ends: task.ends.map(({ end }) => end),
        oneDial: at && oneDialSentence(task, at),
      }));
      const ordered = byHose(items, hose);
      hose = dieKey(ordered.at(-1)!.line.hose);
      return { machine, die: own[0]!.task.ends[0]!.die.trim(), dial: own[0]!.dial, items: ordered };
    }),
  );
}

interface Setting {
  readonly die: string;
  readonly dial: string;
}

/** Counts what is set anew on one machine; an unknown dial counts as another one. */
function countsOf(settings: readonly Setting[], now: Setting): SettingCounts {
  const isKnownDie = now.die !== '';
  let [dieLoads, dieChanges, dialChanges] = [0, 0, 0];
  let before: Setting | undefined = isKnownDie || now.dial !== '' ? { die: dieKey(now.die), dial: now.dial } : undefined;
  for (const { die, dial } of settings) {
    const isOther = !before || before.die !== dieKey(die);
    if (isOther) dieLoads += 1;
    if (isOther && before && before.die !== '') dieChanges += 1;
    if (before && before.dial !== '' ? before.dial !== dial : before !== undefined) dialChanges += 1;
    before = { die: dieKey(die), dial };
  }
  return { dieLoads, dieChanges, dialChanges };
}

const sum = (counts: readonly SettingCounts[]): SettingCounts => ({
  dieLoads: counts.reduce((all, { dieLoads }) => all + dieLoads, 0),
  dieChanges: counts.reduce((all, { dieChanges }) => all + dieChanges, 0),
  dialChanges: counts.reduce((all, { dialChanges }) => all + dialChanges, 0),
});

/** Settings as they follow each other when the lines are made as they stand: all ends A of a line, then all its ends B. */
function sheetSettings(lines: readonly WorkLine[]): readonly Setting[] {
  const all = lines.flatMap(({ ends }) => ends.map(({ die, dial }) => ({ die, dial: dialText(dial) })));
  return all.filter(({ die, dial }, index) => index === 0 || all[index - 1]!.die !== die || all[index - 1]!.dial !== dial);
}

const hasDies = ({ ends }: WorkLine) => ends.every(({ die }) => die.trim() !== '');

/**
 * The order of work of a week: fewest die loads, then fewest dial changes, then hose by hose; the die in the machine first. All ends that
 * go through a die are crimped while it is in, so that a line with two dies comes up twice. Where both ends of a line lie within tolerance
 * at one dial, they get one.
 */
export function orderOfWork(lines: readonly WorkLine[], options: OrderOptions): OrderOfWork {
  const crimped = lines.filter(({ ends }) => ends.length > 0);
  const known = crimped.filter(hasDies);
  const machines = [...new Map(known.map(({ machine }) => [dieKey(machine), machine])).values()];
  const ofMachine = (machine: string) => known.filter(line => dieKey(line.machine) === dieKey(machine));
  const perMachine = machines.map(machine => groupsOf(machine, ofMachine(machine), options));
  const groups = perMachine.flat();
  const settings = perMachine.map(own => own.map(({ die, dial }) => ({ die, dial: dialText(dial) })));
  const worked = groups.flatMap(({ items }) => items.map(({ line }) => line.row));
  return {
    groups,
    counts: sum(machines.map((machine, index) => countsOf(settings[index]!, options.inMachine(machine)))),
    inSheetOrder: sum(machines.map(machine => countsOf(sheetSettings(ofMachine(machine)), options.inMachine(machine)))),
    isBest: perMachine.every(own => new Set(own.map(({ die }) => dieKey(die))).size <= EXACT_DIES),
    unknown: crimped.filter(line => !hasDies(line)),
    rows: [...new Set([...worked, ...lines.map(({ row }) => row)])],
  };
}
