import type { CutPlan } from '../../core/cutplan/cutPlan';
import { Decimal } from '../../core/units/decimal';
import type { CutLine } from '../jobs/cutLine';
import type { CutSettings } from './cutSettings';
import type { FilledStock } from './firstFit';
import type { HoseJob } from './hoseJob';
import { byAge } from './oldestFirst';
import { isTooOld } from '../rack/hoseAge';
import type { RackRow } from '../rack/rackRow';

/** One cut of a reel and the assembly it is for. */
export interface PlannedCut {
  readonly length: Decimal;
  readonly line: CutLine;
  /** Which piece of the line: 1 … quantity. */
  readonly piece: number;
}

/** One piece of stock and how it is cut, in cutting order. */
export interface PlannedReel {
  readonly rack: RackRow;
  readonly cuts: readonly PlannedCut[];
  readonly squaring: Decimal;
  readonly kerf: Decimal;
  readonly left: Decimal;
  /** True where what is left goes back into the rack. */
  readonly isKept: boolean;
  /** True where the hose is older than the user's limit. */
  readonly isTooOld: boolean;
}

/** What is left of a piece of stock; the last piece needs no kerf behind it when it ends flush. */
function leftOf(length: Decimal, cuts: readonly PlannedCut[], settings: CutSettings): Decimal {
  const pieces = cuts.reduce((sum, cut) => sum.plus(cut.length).plus(settings.kerf), new Decimal(0));
  return Decimal.max(0, length.minus(settings.squaring ?? 0).minus(pieces));
}

function reelOf(rack: RackRow, cuts: readonly PlannedCut[], left: Decimal, settings: CutSettings, today: string): PlannedReel {
  const isKept = settings.keep !== undefined && left.gte(settings.keep);
  return {
    rack: { ...rack, quantity: 1 },
    cuts,
    squaring: settings.squaring ?? new Decimal(0),
    kerf: settings.kerf,
    left,
    isKept,
    isTooOld: isTooOld(rack, settings.ageLimitMonths, today),
  };
}

/** Hands out the pieces of the lines, in the order of the sheet, by their length. */
function pieceQueue(lines: readonly CutLine[]): (length: Decimal) => PlannedCut {
  const queues = new Map<string, PlannedCut[]>();
  for (const line of lines) {
    const key = line.cutLength.toString();
    const pieces = Array.from({ length: line.quantity }, (_, n) => ({ length: line.cutLength, line, piece: n + 1 }));
    queues.set(key, [...(queues.get(key) ?? []), ...pieces]);
  }
  return length => {
    const next = queues.get(length.toString())?.shift();
    if (!next) throw new Error(`The plan cuts ${length}, which no line needs any more.`);
    return next;
  };
}

/** Hands out pieces of the rack by their length, oldest first. */
function rackQueue(rack: readonly RackRow[]): (length: Decimal) => RackRow {
  const left = byAge(rack).map(row => ({ row, quantity: row.quantity }));
  return length => {
    const next = left.find(one => one.quantity > 0 && one.row.length.eq(length));
    if (!next) throw new Error(`The plan cuts stock of ${length}, which is no longer in the rack.`);
    next.quantity -= 1;
    return next.row;
  };
}

/** The plan piece of stock by piece of stock: which one of the rack, and for which line each cut is. */
export function plannedReels(job: HoseJob, plan: CutPlan, settings: CutSettings): readonly PlannedReel[] {
  const nextPiece = pieceQueue(job.lines);
  const nextStock = rackQueue(job.rack);
  return plan.rows.flatMap(row =>
    Array.from({ length: row.times }, () => {
      const cuts = row.cuts.flatMap(({ length, count }) => Array.from({ length: count }, () => nextPiece(length)));
      return reelOf(nextStock(row.stock), cuts, row.left, settings, job.today);
    }),
  );
}

/** The same for stock that was filled without a plan. */
export function filledReels(stock: readonly FilledStock[], settings: CutSettings, today: string): readonly PlannedReel[] {
  const counts = new Map<CutLine, number>();
  return stock.map(({ rack, cuts }) => {
    const planned = cuts.map(({ line, length }) => {
      const piece = (counts.get(line) ?? 0) + 1;
      counts.set(line, piece);
      return { length, line, piece };
    });
    return reelOf(rack, planned, leftOf(rack.length, planned, settings), settings, today);
  });
}
