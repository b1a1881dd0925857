import { partKey } from '../../core/catalogue/partName';
import { strayReadings } from '../../core/quality/strayReadings';
import { isoDate, isoMoment } from '../../core/units/sheetDate';
import type { MachineChange } from '../crimps/readMachineChanges';
import type { JudgedCrimp } from './judgedCrimp';
import { rowsText } from '../table/rowsText';

/** From when crimps count, and why. */
export interface Epoch {
  readonly why: 'log' | 'from day';
  /** Day or moment in words. */
  readonly from: string;
  readonly change?: MachineChange | undefined;
  /** True where the crimps have no dates to tell which were made since. */
  readonly isBlind: boolean;
}

/** A crimp with a reading that does not belong to it. */
export interface StrayCrimp {
  readonly crimp: JudgedCrimp;
  /** From 0. */
  readonly reading: number;
  /** Median of its other readings. */
  readonly others: number;
}

/** Which crimps tell about the machine and its settings as they are. */
export interface CountedCrimps {
  /** Made since the epoch at the present dial: all that tell of the present. */
  readonly present: readonly JudgedCrimp[];
  /** Of them those that go into the search for causes. */
  readonly counted: readonly JudgedCrimp[];
  readonly hasDates: boolean;
  readonly hasDies: boolean;
  /** Crimps whose date lies ahead, or far from all others. */
  readonly slipped: ReadonlySet<JudgedCrimp>;
  readonly strays: readonly StrayCrimp[];
  readonly epoch: Epoch | undefined;
  /** What was not counted and why, a sentence each. */
  readonly notes: readonly string[];
}

/** From when crimps count. */
export interface CountingRules {
  readonly change?: MachineChange | undefined;
  /** First day that counts, as somebody set it. */
  readonly fromDay?: number | undefined;
  /** Day number; later dates are slips. */
  readonly today?: number | undefined;
}

/** Where so few lack a date or die they are left out of the search, else the search knows none. */
const FEW = 0.1;
/** A date this far from all others, in days and in spans of the others, is a slip. */
const FAR_DAYS = 90;
const FAR_SPANS = 1.5;

/** The die a crimp was made with: the sheet's, else the Catalogue's. */
export const dieOf = ({ die, wantedDie }: Pick<JudgedCrimp, 'die' | 'wantedDie'>): string => die || wantedDie;

/** So many rows are named in a sentence. */
const MOST_ROWS_NAMED = 5;

const crimpRowsText = (crimps: readonly JudgedCrimp[]) =>
  rowsText(
    crimps.map(({ row }) => row).sort((a, b) => a - b),
    MOST_ROWS_NAMED,
  );

/** Dates that lie ahead, or far from all others: slips of the pen. */
function slippedDates(crimps: readonly JudgedCrimp[], today: number | undefined): ReadonlySet<JudgedCrimp> {
  const dated = crimps.filter(({ date }) => date !== undefined).sort((a, b) => a.date! - b.date!);
  const few = Math.max(1, Math.floor(dated.length * 0.02));
  const slips = new Set(dated.filter(({ date }) => today !== undefined && Math.floor(date!) > today));
  const rest = dated.filter(crimp => !slips.has(crimp));
  for (let count = 1; count <= few && rest.length > 5 * count; count++) {
    const [first, last] = [rest[count]!.date!, rest.at(-1 - count)!.date!];
    const far = Math.max(FAR_DAYS, FAR_SPANS * (rest.at(-1)!.date! - first));
    const farAfter = Math.max(FAR_DAYS, FAR_SPANS * (last - rest[0]!.date!));
    if (first - rest[count - 1]!.date! > far) for (const crimp of rest.slice(0, count)) slips.add(crimp);
    if (rest.at(-count)!.date! - last > farAfter) for (const crimp of rest.slice(-count)) slips.add(crimp);
  }
  return slips;
}

function epochOf({ change, fromDay }: CountingRules, isBlind: boolean): Epoch | undefined {
  if (fromDay !== undefined && (!change || fromDay >= Math.floor(change.moment)))
    return { why: 'from day', from: isoDate(fromDay), isBlind };
  return change && { why: 'log', from: isoMoment(change.moment), change, isBlind };
}

/** Since when crimps count, in words: `since the change in Machine log of 2026-02-06 (row 3)`, `from 2026-02-09 on`. */
export function epochText({ why, from, change }: Epoch): string {
  return why === 'log' ? `since the change in ${change!.sheet} of ${from} (row ${change!.row})` : `from ${from} on`;
}

/** Whether a crimp was made since the epoch; one of the day of a change whose time is not known may be either. */
function isSince({ date }: JudgedCrimp, epoch: Epoch, { change, fromDay }: CountingRules): boolean {
  if (date === undefined) return false;
  if (epoch.why === 'from day') return date >= fromDay!;
  const isDay = Number.isInteger(change!.moment) || Number.isInteger(date);
  return isDay ? Math.floor(date) > Math.floor(change!.moment) : date > change!.moment;
}

/** Crimps since the last change of the dial, of each combination with each die; what names no dial counts as the same. */
function atPresentDial(crimps: readonly JudgedCrimp[]): ReadonlySet<JudgedCrimp> {
  const dials = new Map<string, JudgedCrimp['dial']>();
  const closed = new Set<string>();
  const kept = new Set<JudgedCrimp>();
  for (const crimp of [...crimps].reverse()) {
    const key = `${partKey(crimp.combination)}\u0000${partKey(crimp.die)}`;
    const dial = dials.get(key);
    if (crimp.dial !== undefined && dial !== undefined && !crimp.dial.eq(dial)) closed.add(key);
    if (closed.has(key)) continue;
    dials.set(key, dial ?? crimp.dial);
    kept.add(crimp);
  }
  return kept;
}

function straysOf(crimps: readonly JudgedCrimp[]): StrayCrimp[] {
  const measured = crimps.map(({ readings, tolerance }) => ({
    readings: readings.map(reading => reading.toNumber()),
    tolerance: tolerance.toNumber(),
  }));
  return strayReadings(measured).map(({ crimp, reading, others }) => ({ crimp: crimps[crimp]!, reading, others }));
}

/** Leaves out those that lack something where they are few; else nobody is known to have it. */
function lacking(crimps: readonly JudgedCrimp[], lacks: (crimp: JudgedCrimp) => boolean) {
  const without = crimps.filter(lacks);
  const areFew = without.length <= FEW * crimps.length;
  return { has: areFew && crimps.length > 0, without: areFew ? without : [], are: without.length };
}

/** Which crimps of a machine count, in the order they were made. */
export function countedCrimps(crimps: readonly JudgedCrimp[], rules: CountingRules): CountedCrimps {
  const slips = slippedDates(crimps, rules.today);
  const hasNoDate = (crimp: JudgedCrimp) => crimp.date === undefined || slips.has(crimp);
  const epoch = epochOf(rules, crimps.every(hasNoDate));
  const since = epoch && !epoch.isBlind ? crimps.filter(crimp => !slips.has(crimp) && isSince(crimp, epoch, rules)) : crimps;
  const atDial = atPresentDial(since);
  const present = since.filter(crimp => atDial.has(crimp));
  const strays = straysOf(present);
  const stray = new Set(strays.map(({ crimp }) => crimp));
  const whole = present.filter(crimp => !stray.has(crimp));
  const dates = lacking(whole, hasNoDate);
  const dies = lacking(whole, crimp => dieOf(crimp) === '');
  const dropped = new Set([...dates.without, ...dies.without]);
  const list = (what: string, out: readonly JudgedCrimp[]) =>
    out.length > 0 ? [`Not counted (no ${what} that can be right): ${crimpRowsText(out)}.`] : [];
  const isPart = (are: number) => are > 0 && are < whole.length;
  return {
    present,
    counted: whole.filter(crimp => !dropped.has(crimp)),
    hasDates: dates.has,
    hasDies: dies.has,
    slipped: slips,
    strays,
    epoch,
    notes: [
      ...(epoch && !epoch.isBlind ? [`${since.length} of ${crimps.length} crimps count, those made ${epochText(epoch)}.`] : []),
      ...list('date', dates.without),
      ...list('die', dies.without),
      ...(dates.has || whole.length === 0
        ? []
        : [
            isPart(dates.are)
              ? `${dates.are} of ${whole.length} crimps have no date that can be read: changes with time are not looked for. Write dates like 2026-03-14.`
              : 'The crimps have no dates: changes with time are not looked for. Add a column Date.',
          ]),
      ...(!dies.has && isPart(dies.are)
        ? [`${dies.are} of ${whole.length} crimps name no die: dies are not compared. Fill in the column Die.`]
        : []),
    ],
  };
}
