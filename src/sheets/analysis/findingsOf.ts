import { partKey } from '../../core/catalogue/partName';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { MachineReadings } from './analyseReadings';
import { deviationText } from './diameterText';
import { doubtfulFinding, rejectedFinding } from './crimpFinding';
import { dieFindings } from './dieFinding';
import { eitherFinding, eithers, type Either } from './eitherFinding';
import type { Finding } from './finding';
import { intervalText, machineFinding } from './machineFinding';
import { blindFinding, mixedFinding, openFinding, tooFewFinding } from './openFinding';
import { alikeFinding, settingFindings } from './settingFinding';
import { dayText } from './sinceText';

/** What the machine was before it came right; none where it did not change. */
function changedText({ cause: { since, before, offset } }: MachineReadings, unit: LengthUnit): string[] {
  if (!since || before === undefined || offset === undefined) return [];
  const now = `${deviationText(offset, unit)} ${unit}`;
  return [
    `The machine changed on ${dayText(since.crimp)}: ${deviationText(before, unit)} ${unit} before, ${now} since. Only crimps since then show it as it is.`,
  ];
}

/** Nothing is off, and no crimp since the last change is rejected. */
function inOrder(machine: MachineReadings, unit: LengthUnit, isClean: boolean): Finding {
  return {
    kind: 'in order',
    look: isClean ? 'success' : 'info',
    title: isClean ? 'In order' : 'In order on average only',
    sentence: isClean
      ? 'Machine and settings are in order: every combination is within tolerance on average.'
      : 'Machine, dies and settings are right on average, but single crimps are not.',
    actions: [isClean ? 'Nothing to correct.' : 'Leave calibration screw and dials alone.'],
    next: [],
    facts: [...changedText(machine, unit), ...intervalText(machine, unit)],
  };
}

/** Whether anything is open besides what is told as setting or die. */
function isOpenNow({ cause, combinations }: MachineReadings, message: readonly Either[]): boolean {
  const isTold = (name: string) => message.some(({ combination }) => combination.name === name);
  return (
    combinations.some(({ name, cause: { finding } }) => finding === 'CANNOT TELL' && !isTold(name)) ||
    cause.dies.some(
      ({ name, finding }) => finding === 'CANNOT TELL' && !message.some(({ die }) => partKey(die) === partKey(name)),
    )
  );
}

/**
 * What was found on one machine, worst first: what makes every other finding doubtful, what touches all crimps, dies, settings by size, what is
 * open, rejected crimps, single ones that do not fit.
 */
export function findingsOf(machine: MachineReadings, unit: LengthUnit): readonly Finding[] {
  const { cause, counts } = machine;
  const rejected = rejectedFinding(machine);
  const last = [rejected, doubtfulFinding(machine, unit)].filter(each => each !== undefined);
  const first = counts.epoch?.isBlind ? [blindFinding(machine)] : [];
  if (cause.mixed) return [...first, mixedFinding(machine, unit), ...last];
  if (cause.finding === 'NOT ENOUGH DATA') return [...first, tooFewFinding(machine, unit), ...last];
  const isAllOpen =
    cause.finding === 'CANNOT TELL' &&
    machine.combinations.every(each => each.counted.length === 0 || each.cause.finding === 'CANNOT TELL');
  const either = isAllOpen ? [] : eithers(machine);
  const isMachineOff = cause.off.some(each => each.startsWith('MACHINE'));
  const others = cause.off.filter(each => !each.startsWith('MACHINE'));
  const isAlone = others.length + either.length === 0;
  const alike = alikeFinding(machine, unit);
  const off = [
    ...(alike ? [alike] : []),
    ...(isMachineOff ? [machineFinding(machine, unit, isAlone)] : []),
    ...dieFindings(machine, unit),
    ...settingFindings(machine, unit, !isMachineOff && !others.includes('DIE') && either.length === 0),
    ...either.map(each => eitherFinding(each, unit)),
  ];
  const open = cause.next && isOpenNow(machine, either) ? [openFinding(machine, unit, isAllOpen, either)] : [];
  const isClean = !rejected && first.length === 0;
  const fine = off.length + open.length === 0 ? [inOrder(machine, unit, isClean)] : [];
  // Rejected crimps are worse than an average that is in order.
  return [...first, ...off, ...open, ...(rejected ? [rejected] : []), ...fine, ...last.slice(rejected ? 1 : 0)];
}
