import type { CutPlanProblem } from '../../core/cutplan/cutPlan';
import { hoseKey, type CutLine } from './cutLine';
import type { CutSettings } from './cutSettings';
import { oldestThatServe } from './oldestFirst';
import { monthsBetween, rackOf, type RackRow } from './rack';

/** Everything to cut from one hose, and what there is to cut it from. */
export interface HoseJob {
  readonly hose: string;
  readonly lines: readonly CutLine[];
  /** Rows of the rack that may be used, in rack order, or oldest first where that is asked for. */
  readonly rack: readonly RackRow[];
  readonly problem: CutPlanProblem;
  /** Sentences about the hose's age. */
  readonly warnings: readonly string[];
}

/** The cutting problem of lines and rack rows. */
export function problemOf(lines: readonly CutLine[], rack: readonly RackRow[], settings: CutSettings): CutPlanProblem {
  return {
    pieces: lines.map(line => ({ length: line.cutLength, quantity: line.quantity })),
    stock: rack.map(row => ({ length: row.length, quantity: row.quantity })),
    kerf: settings.kerf,
    squaring: settings.squaring,
    keep: settings.keep,
    unit: settings.unit,
  };
}

function ageWarnings(rack: readonly RackRow[], settings: CutSettings, today: string): string[] {
  const { ageLimitMonths: limit } = settings;
  const nameOf = (row: RackRow) => [row.place, row.lot && `lot ${row.lot}`].filter(Boolean).join(', ') || `row ${row.row}`;
  const old = limit === undefined ? [] : rack.filter(row => row.made !== '' && monthsBetween(row.made, today) > limit);
  const undated = limit === undefined && !settings.isOldestFirst ? [] : rack.filter(row => row.made === '');
  return [
    ...old.map(
      row => `${nameOf(row)} was made ${row.made}: older than your limit. Do not use it without a check by a qualified person.`,
    ),
    ...(undated.length > 0 ? [`No date of making: ${undated.map(nameOf).join('; ')}.`] : []),
  ];
}

/**
 * The lines by hose, in order of first appearance, each with its part of the rack.
 * @param today as `2026-10-05`, for the age of the hose
 */
export function hoseJobs(
  lines: readonly CutLine[],
  rack: readonly RackRow[],
  settings: CutSettings,
  today: string,
): readonly HoseJob[] {
  const groups = new Map<string, CutLine[]>();
  for (const line of lines) {
    const group = groups.get(hoseKey(line.hose));
    if (group) group.push(line);
    else groups.set(hoseKey(line.hose), [line]);
  }
  return [...groups.values()].map(group => {
    const all = rackOf(rack, group[0]!.hose);
    const usable = settings.isOldestFirst ? oldestThatServe(group, all, settings) : all;
    return {
      hose: group[0]!.hose,
      lines: group,
      rack: usable,
      problem: problemOf(group, usable, settings),
      warnings: ageWarnings(usable, settings, today),
    };
  });
}
