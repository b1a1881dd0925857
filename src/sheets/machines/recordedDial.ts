import { quotedText } from '../../core/quotedText';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { settingKey } from '../../core/catalogue/catalogueIndex';
import { crimpSetup, type CrimpSetup } from '../../core/catalogue/crimpSetup';
import { ambiguousDate, dayNumber, isoMoment, momentNumber } from '../../core/units/sheetDate';
import { machineDescription } from '../../core/catalogue/machineDial';
import { partKey } from '../../core/catalogue/partName';
import type { DialProposal, StandingDial } from './dialProposal';

/** What a proposal is compared with. */
export interface DialComparison {
  readonly setUp: CrimpSetup;
  readonly old: StandingDial;
  /** Recorded dials of the key, newest first. */
  readonly history: readonly StandingDial[];
  readonly isNewMachine: boolean;
  /** From when it would count: ISO date, with a time of day where there is one. */
  readonly from: string;
  /** Why it cannot be recorded. */
  readonly refusal: string | undefined;
  /** What the user should know before confirming. */
  readonly warnings: readonly string[];
}

function historyOf(catalogue: Catalogue, { machine, hose, fitting }: DialProposal, die: string): StandingDial[] {
  const entries = catalogue.index.settings.get(settingKey(machine, hose, fitting)) ?? [];
  return entries
    .filter(entry => entry.die === partKey(die) && entry.entry.row?.dial !== undefined)
    .map(({ date, entry }) => ({
      dial: String(entry.row!.dial),
      from: 'MACHINE',
      date: date === undefined || !Number.isFinite(date) ? '' : isoMoment(date),
      ...(entry.row!.by !== undefined && { by: entry.row!.by }),
    }));
}

/** From when a proposal counts: a day, with its time of day where it has one; today without one is this minute. */
function recordedFrom({ date }: Pick<DialProposal, 'date'>, now: string): string {
  const moment = momentNumber(date);
  if (moment === undefined) return date;
  return Number.isInteger(moment) && moment === dayNumber(now) ? now : isoMoment(moment);
}

const isLater = (moment: number, now: string) => {
  const limit = momentNumber(now)!;
  return Number.isInteger(limit) ? Math.floor(moment) > limit : moment > limit;
};

function dateRefusal(from: string, now: string, history: readonly StandingDial[]): string | undefined {
  const moment = momentNumber(from);
  if (moment === undefined) {
    return `${quotedText(from)} is not a date: ${ambiguousDate(from) ?? 'write it like 2025-03-14 or 2025-03-14 15:30'}.`;
  }
  if (isLater(moment, now)) return `${from} is in the future: a dial is recorded from the time it is used.`;
  // ISO texts sort as their moments do, a day without a time of day before all times of that day.
  const newer = history.find(each => each.date > from);
  if (!newer) return undefined;
  const isSameDay = newer.date.slice(0, 10) === from.slice(0, 10);
  const advice = isSameDay ? ' Add the time of day, or a later one.' : '';
  return `Machines has a newer dial, ${newer.dial} of ${newer.date}: a row of ${from} would not count.${advice}`;
}

/** Two rows of one time are kept; it is said which of them counts. */
function sameTime(from: string, history: readonly StandingDial[]): string[] {
  const same = history.find(({ date }) => date === from);
  return same ? [`Machines already has a dial of ${from} for this, ${same.dial}. The lower row counts: the new one.`] : [];
}

function limitRefusal(catalogue: Catalogue, proposal: DialProposal, setUp: CrimpSetup, isNewMachine: boolean) {
  const row = isNewMachine ? undefined : machineDescription(catalogue, proposal.machine, setUp.die);
  const { dial } = proposal;
  const look = 'look at die, hose, ferrule and readings first';
  const refusal =
    row?.lowest !== undefined && dial.lt(row.lowest)
      ? `${dial} is below the machine’s lowest dial, ${row.lowest}: ${look}.`
      : row?.highest !== undefined && dial.gt(row.highest)
        ? `${dial} is above the machine’s highest dial, ${row.highest}: ${look}.`
        : undefined;
  const move = setUp.dial === undefined ? undefined : dial.minus(setUp.dial).abs();
  const isFar = row?.largestMove !== undefined && move?.gt(row.largestMove);
  return { refusal, warnings: isFar ? [`That is ${move} digits, more than the largest move ${row.largestMove}: ${look}.`] : [] };
}

/**
 * Compares a proposed dial with what counts now.
 * @param now ISO date, with the time of day where that is known
 * @throws TradeError where the catalogue has no crimp data for the pair, or a row in question was left out for a problem
 */
export function recordedDial(catalogue: Catalogue, proposal: DialProposal, now: string): DialComparison {
  const { machine, hose, fitting, dial, die } = proposal;
  const isNewMachine = !catalogue.index.machines.has(partKey(machine));
  const found = crimpSetup(catalogue, hose, fitting, isNewMachine ? undefined : machine);
  // The catalogue's dials are not for a machine beside others that nobody has said it of: see catalogueDialsHold.
  const isBesideOthers = isNewMachine && catalogue.index.machines.size > 0;
  const setUp: CrimpSetup = isBesideOthers ? { ...found, dial: undefined, source: 'NO DIAL' } : found;
  const history = historyOf(catalogue, proposal, setUp.die);
  const from = recordedFrom(proposal, now);
  const old: StandingDial = history[0] ?? { dial: String(setUp.dial ?? ''), from: setUp.source, date: '' };
  const limits = limitRefusal(catalogue, proposal, setUp, isNewMachine);
  const refusal =
    (die !== '' && partKey(die) !== partKey(setUp.die)
      ? `The Catalogue crimps this pair with die ${setUp.die}: a dial for ${die} would not be used.`
      : undefined) ??
    (setUp.dial !== undefined && dial.eq(setUp.dial)
      ? `${dial} is the dial that counts already (${old.from}${old.date && `, ${old.date}`}).`
      : undefined) ??
    limits.refusal ??
    dateRefusal(from, now, history);
  const unknown = isNewMachine ? [`Machines has no row for ${machine} yet: this one will be the first.`] : [];
  return {
    setUp,
    old,
    history,
    isNewMachine,
    refusal,
    from,
    warnings: [...unknown, ...sameTime(from, history), ...limits.warnings],
  };
}
