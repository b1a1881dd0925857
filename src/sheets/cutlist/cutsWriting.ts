import type { Workbook } from '../../workbook/workbook';
import { hoseKey } from '../jobs/cutLine';
import type { JobTable } from '../jobs/jobTable';
import { jobStatusChanges } from '../pieces/jobStatusChanges';
import { pieceBook } from '../pieces/pieceBook';
import { withoutOtherWork } from '../pieces/piecesOfLine';
import { planPieces } from '../pieces/planPieces';
import type { PlanPiecesOptions } from '../pieces/piecePlanner';
import { freeSheetName } from '../print/freeSheetName';
import type { Writing } from '../print/writing';
import type { RackBefore } from '../rack/newestRack';
import { cutListSheet } from './cutListSheet';
import type { Gathered } from './gatherCuts';
import { overallResult } from './overallResult';
import type { HosePlan } from './planHose';
import { leftOutSentences, lengthSentence } from './leftOutSentences';
import { hoseSummary } from './planText';
import { barredSentences, tooOldSentence, twiceSentence, unconfirmedSentence } from './rackSentences';
import { rackAfterSheet } from './rackAfterSheet';
import { rowsText } from '../table/rowsText';

/** What is said about the pieces of a cut list; unit and catalogue are the plan's. */
export type CutsWritingOptions = Omit<PlanPiecesOptions, 'unit' | 'catalogue' | 'otherWork'>;

/** A cut list with all that follows from it: the rack afterwards, the pieces, the status of their lines. */
export interface CutsWriting extends Writing {
  readonly cutList: string;
  readonly rackAfter: string;
  /** What the rack afterwards was made from. */
  readonly before: RackBefore;
  /** Sheet of the pieces. */
  readonly pieces: string;
  /** What became of the pieces and of the job sheet's status. */
  readonly piecesTold: string;
  /** Job tables that have no column for the status: one can be offered. */
  readonly withoutStatus: readonly JobTable[];
}

/**
 * Plans the writing of a cut list: cut list and rack afterwards as new sheets, the pieces added to the sheet Pieces, and the job sheet's
 * status brought up to them; all in one batch, and taken back in one.
 * @throws Error with a sentence where the sheet Pieces cannot grow
 */
export async function cutsWriting(
  workbook: Workbook,
  gathered: Gathered,
  plans: readonly HosePlan[],
  options: CutsWritingOptions,
): Promise<CutsWriting> {
  const { settings, rack, report, rackSheet, lineCount, read } = gathered;
  const today = options.now.slice(0, 10);
  const taken = await workbook.sheets();
  const [cutList, rackAfter] = [freeSheetName('Cut list', taken, today), freeSheetName('Rack after', taken, today)];
  const reels = plans.flatMap(plan => plan.reels);
  const source = `From sheet ${report.sheet} (${lineCount} lines) and rack ${rackSheet}, ${today}`;
  const hoses = new Map(plans.map(plan => [hoseKey(plan.job.hose), hoseSummary(plan, settings.unit)]));
  const rackSaid = [
    lengthSentence(gathered),
    tooOldSentence(gathered),
    unconfirmedSentence(gathered, plans),
    twiceSentence(gathered),
    ...barredSentences(gathered, plans),
  ].filter(said => said !== undefined);
  const notes = [...rackSaid, ...leftOutSentences(report), ...plans.flatMap(({ job }) => job.warnings)];
  const book = await pieceBook(workbook);
  const { otherWork } = gathered.wishes;
  const made = planPieces(book, reels, read.lines, { ...options, unit: settings.unit, catalogue: read.catalogue, otherWork });
  const result = overallResult(plans, settings.unit);
  const status = jobStatusChanges(withoutOtherWork(made.after, otherWork), read);
  const own = status.left.map(({ row }) => row);
  const left = own.length > 0 && `The status of ${rowsText(own)} says something else and was left.`;
  const ticks = status.ticks.map(
    ({ heading, from }) => `Column ${heading} is for ticks: a line gets its tick there when all its pieces are ${from}.`,
  );
  const piecesTold = [made.writing.message, status.writing?.message, left, ...ticks].filter(Boolean).join(' ');
  return {
    cutList,
    rackAfter,
    before: { sheet: rackSheet, pieces: [...made.numberOf.values()] },
    pieces: book.sheet,
    withoutStatus: status.without,
    changes: [
      ...cutListSheet(cutList, reels, settings, { source, result, notes, hoses }, made.numberOf),
      ...rackAfterSheet(rackAfter, rack, reels, settings.unit),
      ...made.writing.changes,
      ...(status.writing?.changes ?? []),
    ],
    undo: [
      ...(status.writing?.undo ?? []),
      ...made.writing.undo,
      { kind: 'removeSheet', sheet: rackAfter },
      { kind: 'removeSheet', sheet: cutList },
    ],
    message: `${cutList} and ${rackAfter} are written. ${piecesTold}`,
    piecesTold,
  };
}
