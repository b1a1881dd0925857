import type { Decimal } from '../../core/units/decimal';
import { lengthIn, type Length } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { JobLine } from '../jobs/jobLine';
import type { Writing } from '../print/writing';
import { changePiece, type PieceChanges } from './changePiece';
import { growPieces } from './growPieces';
import { PieceNumbers } from './nextNumber';
import { pieceKey, type Piece, type PieceEnd } from './piece';
import type { PieceBook } from './pieceBook';
import type { PieceCells } from './pieceCells';
import type { PieceRole, PieceUnits } from './pieceColumns';
import { piecesOfLine } from './piecesOfLine';
import { statusOfPiece } from './pieceStatus';
import { plannedCells, type PlannedPieceOptions } from './plannedCells';
import type { Pieces } from './readPieces';
import { countedText } from '../../core/countedText';

/** One cut of a plan: for which line of the job sheet, or for which piece that waits. */
export interface PlannedPiece {
  readonly length: Decimal;
  readonly line: {
    readonly row: number;
    readonly line: string;
    /** The piece that waits for this cut; else the cut is for a line of the job sheet. */
    readonly waits?: string | undefined;
    /** Only what the line still wants beside its pieces was planned: each cut is a piece more. */
    readonly isMore?: boolean | undefined;
    /** The line is made once more: its cuts are added however many pieces there are. */
    readonly isAgain?: boolean | undefined;
  };
  /** Which piece of the line in this plan: 1 … */
  readonly piece: number;
}

/** A reel of a plan with what is cut from it; the reels of a cut list are of this shape. */
export interface ReelOfPieces {
  readonly rack: { readonly lot: string; readonly place: string; readonly reel?: string | undefined };
  readonly cuts: readonly PlannedPiece[];
}

/** How pieces are planned. */
export interface PlanPiecesOptions extends PlannedPieceOptions {
  /** Unit of pressures on a new sheet. */
  readonly pressureUnit: string;
  /** Before the line, where the job sheet gives no assembly number. */
  readonly prefix: string;
  /** `2026-10-05 07:12`. */
  readonly now: string;
  /** Rows of the job sheet in the order of work; the others follow in the order of the sheet. */
  readonly order?: readonly number[] | undefined;
}

/** What writing a cut list does to the sheet Pieces. */
export interface PiecePlan {
  readonly writing: Writing;
  /** Numbers of pieces that were added. */
  readonly added: readonly string[];
  /** Pieces that were there: planned anew on another reel, or waiting ones that are planned now. */
  readonly replanned: readonly string[];
  /** Pieces that stand there already as this plan has them. */
  readonly unchanged: readonly string[];
  /** Worth telling: more cuts than a line wants, numbers of another job. */
  readonly notes: readonly string[];
  /** The number of the piece that each cut becomes; a cut that becomes none is missing. */
  readonly numberOf: ReadonlyMap<PlannedPiece, string>;
  /** The pieces as they are once this is written, as far as the status of their lines goes. */
  readonly after: readonly Piece[];
}

interface Cut {
  readonly cut: PlannedPiece;
  readonly reel: ReelOfPieces['rack'];
}

const NO_END: PieceEnd = {
  fitting: '',
  lot: '',
  die: '',
  dial: undefined,
  target: undefined,
  tolerance: undefined,
  readings: [],
  verdict: '',
};

/** A piece that was planned just now, as far as its line's status goes. */
const newPiece = ({ line, label, order, hose }: JobLine, piece: string): Piece => ({
  sheet: '',
  row: 0,
  piece,
  line,
  label,
  order,
  hose,
  lot: '',
  reel: '',
  cutLength: undefined,
  overall: undefined,
  shortest: undefined,
  longest: undefined,
  ends: [NO_END, NO_END],
  ferruleLot: '',
  machine: '',
  finished: undefined,
  lengthVerdict: '',
  testPressure: undefined,
  testedAt: undefined,
  testedFor: undefined,
  gauges: [],
  gaugeKinds: new Map(),
  flushed: false,
  capped: false,
  by: '',
  date: undefined,
  status: 'planned',
  replaces: '',
  useBy: '',
  note: '',
  problems: [],
});

const UNTRACED: ReadonlySet<PieceRole> = new Set(['status']);

/** All cuts in the order of work. */
function cutsInOrder(reels: readonly ReelOfPieces[], order: readonly number[]): readonly Cut[] {
  const rank = new Map(order.map((row, index) => [row, index]));
  const of = ({ cut }: Cut) => (cut.line.waits === undefined ? rank.get(cut.line.row) : undefined) ?? order.length;
  return reels
    .flatMap(({ rack, cuts }) => cuts.map(cut => ({ cut, reel: rack })))
    .sort((a, b) => of(a) - of(b) || a.cut.line.row - b.cut.line.row || a.cut.piece - b.cut.piece);
}

class PiecePlanner {
  readonly rows: (PieceCells & { readonly piece: string })[] = [];
  readonly added: Piece[] = [];
  readonly numberOf = new Map<PlannedPiece, string>();
  readonly replanned: string[] = [];
  readonly unchanged: string[] = [];
  readonly notes: string[] = [];
  readonly changed: PieceChanges[] = [];
  private readonly numbers: PieceNumbers;

  constructor(
    private readonly book: PieceBook,
    private readonly options: PlanPiecesOptions,
  ) {
    this.numbers = new PieceNumbers(this.all);
  }

  private get all(): readonly Piece[] {
    return this.book.pieces?.pieces ?? [];
  }

  private lengthOf({ cut }: Cut): Length {
    return { value: cut.length, unit: measureUnit('length', this.options.unit)! };
  }

  private reelCells(cut: Cut): PieceCells {
    const { lot, reel, place } = cut.reel;
    return { lot, reel: reel || place, cutLength: this.lengthOf(cut) };
  }

  /** The same cut list once more: as many pieces, of the same reels and lengths. */
  private isSame(planned: readonly Piece[], cuts: readonly Cut[]): boolean {
    const { unit } = this.options;
    const keys = (texts: readonly (readonly unknown[])[]) => texts.map(each => each.join('\u001f')).sort();
    const there = keys(planned.map(({ lot, reel, cutLength }) => [lot, reel, cutLength && lengthIn(cutLength, unit)]));
    const now = keys(cuts.map(({ cut, reel: { lot, reel, place } }) => [lot, reel || place, cut.length]));
    return there.length === now.length && there.every((key, index) => key === now[index]);
  }

  /** Puts a piece that stands there on the reel of this plan. */
  private replan(pieces: Pieces, piece: Piece, cut: Cut): void {
    this.numberOf.set(cut.cut, piece.piece);
    const changes = changePiece(pieces, piece, { ...this.reelCells(cut), status: 'planned' }, this.options.now, UNTRACED);
    if (changes.changes.length === 0) this.unchanged.push(piece.piece);
    else {
      this.replanned.push(piece.piece);
      this.changed.push(changes);
    }
  }

  waiting(cut: Cut, waits: string): void {
    const { pieces } = this.book;
    const piece = this.all.find(each => pieceKey(each.piece) === pieceKey(waits));
    if (!pieces || !piece) throw new Error(`Piece ${waits} is no longer on sheet ${this.book.sheet}: plan again.`);
    this.replan(pieces, piece, cut);
  }

  line(line: JobLine, cuts: readonly Cut[]): void {
    const { good, open } = piecesOfLine(this.all, line);
    const planned = good.filter(piece => statusOfPiece(piece) === 'planned');
    const areMore = cuts.some(({ cut }) => cut.line.isMore) || (cuts.length <= open && !this.isSame(planned, cuts));
    const again = areMore ? [] : cuts.slice(0, planned.length);
    again.forEach((cut, index) => this.replan(this.book.pieces!, planned[index]!, cut));
    if (!areMore && planned.length > again.length) {
      const names = planned.slice(again.length).map(({ piece }) => piece);
      this.notes.push(`Not in this plan, though planned before: ${names.join(', ')}.`);
    }
    const more = cuts.slice(again.length);
    const isAll = line.quantity === undefined || cuts.some(({ cut }) => cut.line.isAgain);
    const added = isAll ? more : more.slice(0, open);
    if (added.length < more.length) {
      const there = good.length - planned.length;
      const are = there === 1 ? 'is 1 piece' : `are ${there} pieces`;
      this.notes.push(
        `Line ${line.line} wants ${line.quantity}, and there ${are} in work or done: ${more.length - added.length} more not added.`,
      );
    }
    const assembly = line.assembly || `${this.options.prefix}${line.line}`;
    if (added.length > 0 && good.length === 0 && this.numbers.has(assembly)) {
      this.notes.push(`Numbers ${assembly}-… are taken by another job: line ${line.line} continues after them.`);
    }
    for (const cut of added) {
      const cells = plannedCells(line, this.lengthOf(cut), this.options);
      const piece = this.numbers.next(assembly);
      this.rows.push({ ...cells, ...this.reelCells(cut), piece });
      this.numberOf.set(cut.cut, piece);
      this.added.push(newPiece(line, piece));
    }
  }

  /** All pieces as they are once this is written. */
  get after(): readonly Piece[] {
    const again = new Set(this.replanned);
    return [...this.all.map(piece => (again.has(piece.piece) ? { ...piece, status: 'planned' as const } : piece)), ...this.added];
  }
}

function sentence({ rows, replanned, unchanged, notes }: PiecePlanner, sheet: string): string {
  const parts = [
    rows.length > 0 && `${countedText(rows.length, 'piece')} added`,
    replanned.length > 0 && `${countedText(replanned.length, 'piece')} put on another reel`,
    unchanged.length > 0 && `${countedText(unchanged.length, 'piece')} there already`,
  ].filter(Boolean);
  return [`${sheet}: ${parts.join(', ') || 'nothing to add'}.`, ...notes].join(' ');
}

/**
 * Plans the rows of the sheet Pieces for a cut list: one a piece, with its reel and lot. A piece that stands there is not doubled: one that
 * is planned only is put on the reel of this plan, its old reel kept in the note; one that is in work stays as it is.
 * @param lines the job lines that were planned
 * @throws Error with a sentence where the sheet has no room, or a cut is for a line that is not there
 */
export function planPieces(
  book: PieceBook,
  reels: readonly ReelOfPieces[],
  lines: readonly JobLine[],
  options: PlanPiecesOptions,
): PiecePlan {
  const planner = new PiecePlanner(book, options);
  const byRow = new Map<number, Cut[]>();
  for (const cut of cutsInOrder(reels, options.order ?? [])) {
    const { row, waits } = cut.cut.line;
    if (waits !== undefined) planner.waiting(cut, waits);
    else byRow.set(row, [...(byRow.get(row) ?? []), cut]);
  }
  for (const [row, cuts] of byRow) {
    const line = lines.find(each => each.row === row);
    if (!line) throw new Error(`The plan cuts for row ${row}, which is no job line any more: plan again.`);
    planner.line(line, cuts);
  }
  const units: PieceUnits = { length: options.unit, pressure: options.pressureUnit };
  const grown = growPieces(book, planner.rows, units);
  return {
    writing: {
      changes: [...planner.changed.flatMap(({ changes }) => changes), ...grown.changes],
      undo: [...grown.undo, ...planner.changed.flatMap(({ undo }) => undo)],
      told: sentence(planner, book.sheet),
    },
    added: planner.rows.map(({ piece }) => piece),
    replanned: planner.replanned,
    unchanged: planner.unchanged,
    notes: planner.notes,
    numberOf: planner.numberOf,
    after: planner.after,
  };
}
