import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import type { CutLine } from '../jobs/cutLine';
import { isReady, type JobLine } from '../jobs/jobLine';
import { readJobs, type Jobs } from '../jobs/readJobs';
import type { JobChoice } from '../jobs/jobChoice';
import { readRack, type Rack } from '../rack/rack';
import { isTooOld } from '../rack/hoseAge';
import { newestRack, rackBefore, type RackBefore } from '../rack/newestRack';
import { rackIn, type RackRow } from '../rack/rackRow';
import { unusableHose } from '../rack/unusableHose';
import { reelLengths } from '../rack/reelLengths';
import type { Piece } from '../pieces/piece';
import { linesStillToPlan, type LinesStillToPlan, type StillToPlan } from '../pieces/linesStillToPlan';
import { withoutOtherWork } from '../pieces/piecesOfLine';
import { readPieces, type Pieces } from '../pieces/readPieces';
import { successorsToCut, type WaitingCuts } from '../pieces/successorsToCut';
import type { RowProblem } from '../table/rowProblem';
import type { LeftOutRow, ReadReport, Takeable } from '../table/tableRows';
import { cutLineOf } from './cutLineOf';
import type { CutSettings } from './cutSettings';
import { hoseJobs, type HoseJob } from './hoseJob';
import { lineKey } from './lineKey';

/** Rows that are taken though they would be left out, and what is meant by lines with a single coupling. */
export interface CutWishes {
  readonly take?: ReadonlySet<Takeable>;
  readonly takeRack?: ReadonlySet<Takeable>;
  readonly plainEnds?: boolean;
  /** Pieces that wait for a plan are not cut with it. */
  readonly leavesWaiting?: boolean;
  /** Hose beyond the age limit is used all the same. */
  readonly takesOld?: boolean;
  /** Numbers of pieces that are other work, though their lines look the same (`pieceKey`). */
  readonly otherWork?: ReadonlySet<string>;
  /** Lines of which it is known that the pieces that look like theirs are their own (`lineKey`). */
  readonly known?: ReadonlySet<string>;
}

/** Everything the plans are made from, as it was read. */
export interface Gathered {
  readonly read: Jobs;
  /** What was taken and left out of the job sheet; lines that the bench cannot cut are among those left out. */
  readonly report: ReadReport;
  /** Rows left out for pieces of a line that looks the same: see `linesStillToPlan`. */
  readonly lookAlike: LinesStillToPlan['lookAlike'];
  readonly alike: LinesStillToPlan['alike'];
  readonly otherLength: LinesStillToPlan['otherLength'];
  readonly rackSheet: string;
  readonly rack: Rack;
  /** Hose of the rack beyond the age limit that is left out. */
  readonly tooOld: readonly RackRow[];
  /** The rack that the newest cut list left; undefined where there is none. */
  readonly newestRack: string | undefined;
  /** What that cut list was planned on; undefined where nobody knows. */
  readonly before: RackBefore | undefined;
  /** Pieces that are planned already and are given reels anew. */
  readonly anew: ReadonlySet<Piece>;
  /** The sheet Pieces; undefined where there is none. */
  readonly pieces: Pieces | undefined;
  /** Pieces that wait for a plan, whether they are cut with this one or not. */
  readonly waiting: WaitingCuts;
  readonly wishes: CutWishes;
  readonly jobs: readonly HoseJob[];
  readonly lineCount: number;
  /** Some lines have overall length and couplings, but nothing says what to cut. */
  readonly lacksCutLength: boolean;
  readonly reelLengths: ReadonlyMap<string, Decimal>;
  readonly settings: CutSettings;
}

/** A reason that nothing can be planned, ready to be shown. */
class NothingToPlan extends Error {}

const NO_CUT_LENGTH = 'no column gives its cut length: add one under Week › Columns';

interface Cuttable {
  readonly lines: readonly CutLine[];
  readonly problems: readonly RowProblem[];
}

function cuttable(lines: readonly StillToPlan[], settings: CutSettings): Cuttable {
  const found: CutLine[] = [];
  const problems: RowProblem[] = [];
  for (const { line, quantity, isMore, isAgain } of lines) {
    if (!line.cutLength) {
      problems.push({ row: line.row, sentence: NO_CUT_LENGTH });
      continue;
    }
    try {
      const whole = cutLineOf(line, line.cutLength, settings);
      found.push(
        quantity === whole.quantity ? { ...whole, isMore, isAgain } : { ...whole, quantity, ordered: whole.quantity, isMore },
      );
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push({ row: line.row, sentence: error.message });
    }
  }
  return { lines: found, problems };
}

function reportOf({ report }: Jobs, { lines, problems }: Cuttable, planned: readonly LeftOutRow[]): ReadReport {
  const leftOut = problems.map(({ row, sentence }): LeftOutRow => ({ row, sentence, reason: 'problem' }));
  // A line that says planned stands here by what its pieces say, if at all.
  const known = report.leftOut.flatMap(each =>
    each.reason === 'planned' ? planned.filter(({ row }) => row === each.row) : each,
  );
  const others = planned.filter(row => !known.includes(row));
  return { ...report, taken: lines.map(({ row }) => row), leftOut: [...known, ...others, ...leftOut] };
}

/** Lines with couplings that say how long they get, in a table without a column of cut lengths. */
function lacksCutLength({ tables, lines }: Jobs): boolean {
  const isShort = ({ cutLength, overall, ends }: JobLine) => !cutLength && overall && ends.some(({ fitting }) => fitting !== '');
  return tables.some(({ columns }) => columns.cutLength === undefined) && lines.some(isShort);
}

/**
 * Reads the selected job lines, the rack and the sheet Pieces. Lines that must not be made, are done, planned or hidden are left out;
 * pieces that wait for a plan come first.
 * @param choice rows that are meant; the selection where left out
 * @throws NothingToPlan, NoJobs where a table is missing
 */
export async function gatherCuts(
  workbook: Workbook,
  rackSheet: string,
  settings: CutSettings,
  today: string,
  wishes: CutWishes = {},
  choice?: JobChoice,
): Promise<Gathered> {
  const unit = measureUnit('length', settings.unit)!;
  const { take, plainEnds } = wishes;
  const step = { value: settings.step, unit };
  const read = await readJobs(workbook, { step, take, plainEnds }, choice);
  const rack = await readRack(workbook, rackSheet, wishes.takeRack, read);
  if (!rack) throw new NothingToPlan(`Sheet ${rackSheet} has no table with the columns Hose and Length.`);
  // What says planned may want more by now: its pieces decide.
  const ready = read.lines.filter(line => (isReady(line) && line.quantity !== 0) || line.standing.kind === 'planned');
  const pieces = await readPieces(workbook);
  const ofLines = withoutOtherWork(pieces?.pieces ?? [], wishes.otherWork);
  const isKnown = (line: JobLine) => wishes.known?.has(lineKey(line)) ?? false;
  const still = linesStillToPlan(ofLines, ready, take ?? new Set(), { step, isKnown });
  const cut = cuttable(still.lines, settings);
  const waiting = successorsToCut(pieces?.pieces ?? [], settings.unit);
  const stock = rackIn(rack.rows, settings.unit);
  const tooOld = wishes.takesOld ? [] : stock.filter(row => isTooOld(row, settings.ageLimitMonths, today));
  const lines = [...(wishes.leavesWaiting ? [] : waiting.lines), ...cut.lines];
  return {
    read,
    report: reportOf(read, cut, still.leftOut),
    lookAlike: still.lookAlike,
    alike: still.alike,
    otherLength: still.otherLength,
    rackSheet,
    rack,
    pieces,
    waiting,
    wishes,
    tooOld,
    newestRack: await newestRack(workbook),
    before: await rackBefore(workbook),
    anew: new Set(still.lines.flatMap(({ anew = [] }) => anew)),
    jobs: hoseJobs(
      lines,
      stock.filter(row => !tooOld.includes(row)),
      settings,
      today,
      unusableHose(rack, tooOld),
    ),
    lineCount: cut.lines.length,
    lacksCutLength: lacksCutLength(read),
    reelLengths: reelLengths(read.catalogue, settings.unit),
    settings,
  };
}

/** Reads the same lines and the same rack again, wherever the selection is now. */
export async function gatherAgain(workbook: Workbook, gathered: Gathered, today: string): Promise<Gathered> {
  const { rackSheet, settings, wishes, read } = gathered;
  return gatherCuts(workbook, rackSheet, settings, today, wishes, read.choice);
}

/** True where lines and rack still say what a plan was made from. */
export function isSameWork(one: Gathered, other: Gathered): boolean {
  const workOf = ({ jobs, rack, pieces }: Gathered) =>
    JSON.stringify([jobs.map(({ lines }) => lines), rack.rows, pieces?.pieces.map(({ piece, status }) => [piece, status])]);
  return workOf(one) === workOf(other);
}
