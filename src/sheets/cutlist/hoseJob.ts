import type { CutPlanProblem } from '../../core/cutplan/cutPlan';
import { hoseKey, type CutLine } from '../jobs/cutLine';
import type { CutSettings } from './cutSettings';
import { isTooOld } from '../rack/hoseAge';
import { rackPlace, rackOf, type RackRow } from '../rack/rackRow';

/** Everything to cut from one hose, and what there is to cut it from. */
export interface HoseJob {
  readonly hose: string;
  readonly lines: readonly CutLine[];
  /** Rows of the rack that may be used, in rack order; once planned oldest first, the oldest that serve. */
  readonly rack: readonly RackRow[];
  readonly problem: CutPlanProblem;
  /** The day of planning, as `2026-10-05`, for the age of the hose. */
  readonly today: string;
  /** Why hose that is in the rack is not among `rack`; "" or left out where nothing was left out. */
  readonly unusable?: string | undefined;
  /** Sentences about the hose's age. */
  readonly warnings: readonly string[];
}

/** The cutting problem of lines and rack rows. */
function problemOf(lines: readonly CutLine[], rack: readonly RackRow[], settings: CutSettings): CutPlanProblem {
  return {
    pieces: lines.map(line => ({ length: line.cutLength, quantity: line.quantity })),
    stock: rack.map(row => ({ length: row.length, quantity: row.quantity })),
    kerf: settings.kerf,
    squaring: settings.squaring,
    keep: settings.keep,
    handling: settings.handling,
    unit: settings.unit,
  };
}

function ageWarnings(rack: readonly RackRow[], settings: CutSettings, today: string): string[] {
  const { ageLimitMonths: limit } = settings;
  const nameOf = (row: RackRow) => [rackPlace(row), row.lot && `lot ${row.lot}`].filter(Boolean).join(', ') || `row ${row.row}`;
  const old = rack.filter(row => isTooOld(row, limit, today));
  const ahead = rack.filter(row => row.made > today);
  const undated = limit === undefined && !settings.isOldestFirst ? [] : rack.filter(row => row.made === '');
  return [
    ...old.map(
      row => `${nameOf(row)} was made ${row.made}: older than your limit. Do not use it without a check by a qualified person.`,
    ),
    ...ahead.map(row => `${nameOf(row)} was made ${row.made}, which is in the future: correct that date.`),
    ...(undated.length > 0 ? [`No date of making: ${undated.map(nameOf).join('; ')}.`] : []),
  ];
}

/** The job with only these rows of the rack. */
export function withRack(
  job: Pick<HoseJob, 'hose' | 'lines' | 'today' | 'unusable'>,
  rack: readonly RackRow[],
  settings: CutSettings,
): HoseJob {
  const { hose, lines, today, unusable } = job;
  const problem = problemOf(lines, rack, settings);
  return { hose, lines, today, unusable, rack, problem, warnings: ageWarnings(rack, settings, today) };
}

/**
 * The lines by hose, in order of first appearance, each with its part of the rack.
 * @param today as `2026-10-05`, for the age of the hose
 * @param unusableOf what was left out of the rack of a hose, and why
 */
export function hoseJobs(
  lines: readonly CutLine[],
  rack: readonly RackRow[],
  settings: CutSettings,
  today: string,
  unusableOf?: (hose: string) => string,
): readonly HoseJob[] {
  const groups = new Map<string, CutLine[]>();
  for (const line of lines) {
    const group = groups.get(hoseKey(line.hose));
    if (group) group.push(line);
    else groups.set(hoseKey(line.hose), [line]);
  }
  return [...groups.values()].map(group => {
    const { hose } = group[0]!;
    return withRack({ hose, lines: group, today, unusable: unusableOf?.(hose) }, rackOf(rack, hose), settings);
  });
}
