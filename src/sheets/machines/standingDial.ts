import { quotedText } from '../../core/quotedText';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { settingKey } from '../../core/catalogue/catalogueIndex';
import { crimpSetup, type CrimpSetup } from '../../core/catalogue/crimpSetup';
import { dayNumber, isoDate } from '../../core/catalogue/dayNumber';
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
      date: date === undefined || !Number.isFinite(date) ? '' : isoDate(date),
    }));
}

function dateRefusal(date: string, today: string, history: readonly StandingDial[]): string | undefined {
  const day = dayNumber(date);
  if (day === undefined) return `${quotedText(date)} is no date: write it like 2025-03-14.`;
  if (day > dayNumber(today)!) return `${date} lies ahead: a dial is recorded from the day it is used.`;
  const same = history.find(each => each.date === date);
  if (same) {
    return `Machines already has a dial of ${date} for this: ${same.dial}. Two of one date would both be left out: correct that row, or record this one under another date.`;
  }
  const newer = history.find(each => each.date > date);
  return newer && `Machines has a newer dial, ${newer.dial} of ${newer.date}: a row of ${date} would not count.`;
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
 * @throws TradeError where the catalogue has no crimp data for the pair, or a row in question was left out for a problem
 */
export function standingDial(catalogue: Catalogue, proposal: DialProposal, today: string): DialComparison {
  const { machine, hose, fitting, dial, die } = proposal;
  const isNewMachine = !catalogue.index.machines.has(partKey(machine));
  const setUp = crimpSetup(catalogue, hose, fitting, isNewMachine ? undefined : machine);
  const history = historyOf(catalogue, proposal, setUp.die);
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
    dateRefusal(proposal.date, today, history);
  const unknown = isNewMachine ? [`Machines has no row for ${machine} yet: this one will be the first.`] : [];
  return { setUp, old, history, isNewMachine, refusal, warnings: [...unknown, ...limits.warnings] };
}
