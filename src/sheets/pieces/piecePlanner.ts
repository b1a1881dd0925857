import { lengthIn, type Length } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { JobLine } from '../jobs/jobLine';
import { changePiece, type PieceChanges } from './changePiece';
import { PieceNumbers } from './nextNumber';
import { pieceKey, type Piece, type PieceEnd } from './piece';
import type { PieceBook } from './pieceBook';
import type { PieceCells } from './pieceCells';
import type { PieceRole } from './pieceColumns';
import { piecesOfLine, withoutOtherWork } from './piecesOfLine';
import { statusOfPiece } from './pieceStatus';
import { plannedCells, type PlannedPieceOptions } from './plannedCells';
import type { Pieces } from './readPieces';
import type { PlannedPiece, PieceCut } from './pieceCuts';

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
  /** Numbers of pieces that are other work, though their lines look the same (`pieceKey`). */
  readonly otherWork?: ReadonlySet<string> | undefined;
}

const NO_END: PieceEnd = {
  fitting: '',
  lot: '',
  die: '',
  dial: undefined,
  target: undefined,
  tolerance: undefined,
  largestSpread: undefined,
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

export class PiecePlanner {
  readonly rows: (PieceCells & { readonly piece: string })[] = [];
  readonly added: Piece[] = [];
  readonly numberOf = new Map<PlannedPiece, string>();
  readonly replanned: string[] = [];
  /** Those of them that had no reel before. */
  readonly reeled: string[] = [];
  readonly unchanged: string[] = [];
  readonly notes: string[] = [];
  readonly changed: PieceChanges[] = [];
  private readonly numbers: PieceNumbers;
  /** What lines may have for theirs. */
  private readonly ofLines: readonly Piece[];

  constructor(
    private readonly book: PieceBook,
    private readonly options: PlanPiecesOptions,
  ) {
    this.numbers = new PieceNumbers(this.all);
    this.ofLines = withoutOtherWork(this.all, options.otherWork);
  }

  private get all(): readonly Piece[] {
    return this.book.pieces?.pieces ?? [];
  }

  private lengthOf({ cut }: PieceCut): Length {
    return { value: cut.length, unit: measureUnit('length', this.options.unit)! };
  }

  private reelCells(cut: PieceCut): PieceCells {
    const { lot, reel, place } = cut.reel;
    return { lot, reel: reel || place, cutLength: this.lengthOf(cut) };
  }

  /** The same cut list once more: as many pieces, of the same reels and lengths. */
  private isSame(planned: readonly Piece[], cuts: readonly PieceCut[]): boolean {
    const { unit } = this.options;
    const keys = (texts: readonly (readonly unknown[])[]) => texts.map(each => each.join('\u001f')).sort();
    const there = keys(planned.map(({ lot, reel, cutLength }) => [lot, reel, cutLength && lengthIn(cutLength, unit)]));
    const now = keys(cuts.map(({ cut, reel: { lot, reel, place } }) => [lot, reel || place, cut.length]));
    return there.length === now.length && there.every((key, index) => key === now[index]);
  }

  /** Puts a piece that stands there on the reel of this plan. */
  private replan(pieces: Pieces, piece: Piece, cut: PieceCut): void {
    this.numberOf.set(cut.cut, piece.piece);
    const changes = changePiece(pieces, piece, { ...this.reelCells(cut), status: 'planned' }, this.options.now, UNTRACED);
    if (changes.changes.length === 0) this.unchanged.push(piece.piece);
    else {
      this.replanned.push(piece.piece);
      if (piece.lot === '' && piece.reel === '') this.reeled.push(piece.piece);
      this.changed.push(changes);
    }
  }

  waiting(cut: PieceCut, waits: string): void {
    const { pieces } = this.book;
    const piece = this.all.find(each => pieceKey(each.piece) === pieceKey(waits));
    if (!pieces || !piece) throw new Error(`Piece ${waits} is no longer on sheet ${this.book.sheet}: plan again.`);
    this.replan(pieces, piece, cut);
  }

  line(line: JobLine, cuts: readonly PieceCut[]): void {
    const { good, open } = piecesOfLine(this.ofLines, line, { anyLength: true });
    const planned = good.filter(piece => statusOfPiece(piece) === 'planned');
    const isSaid = cuts.some(({ cut }) => cut.line.isMore !== undefined);
    const mayBeMore = !isSaid && cuts.length <= open && !this.isSame(planned, cuts);
    const areMore = cuts.some(({ cut }) => cut.line.isMore) || mayBeMore;
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
