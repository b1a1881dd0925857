import type { Decimal } from '../../core/units/decimal';
import type { Measure } from '../../cells/sheetCell';
import type { GaugeUse } from '../gauges/gaugeUse';
import type { Length } from '../../core/units/lengthUnit';

/** How far a piece is; "" = waiting for a plan: the successor of a scrapped one, or one to be made again. */
export type PieceStatus = '' | 'planned' | 'cut' | 'crimped' | 'tested' | 'done' | 'scrapped';

/** One end of a piece; what its row does not say is undefined or "". */
export interface PieceEnd {
  readonly fitting: string;
  readonly lot: string;
  readonly die: string;
  readonly dial: Decimal | undefined;
  readonly target: Length | undefined;
  readonly tolerance: Length | undefined;
  /** As its own column says, else as the formula of its verdict does. */
  readonly largestSpread: Length | undefined;
  /** As many as the sheet has columns for; undefined where a cell is blank. */
  readonly readings: readonly (Length | undefined)[];
  /** As its cell shows it: `IN SPEC`, `TIGHT`, …; "" where it is blank or an error. */
  readonly verdict: string;
}

/** One row of the sheet Pieces. Lengths carry the unit that the sheet gives them in. */
export interface Piece extends GaugeUse {
  readonly sheet: string;
  /** As the sheet shows it. */
  readonly row: number;
  /** `H3-117-2`: number of the assembly, and which piece of it. */
  readonly piece: string;
  readonly line: string;
  readonly label: string;
  readonly order: string;
  readonly hose: string;
  readonly lot: string;
  readonly reel: string;
  readonly cutLength: Length | undefined;
  readonly overall: Length | undefined;
  readonly shortest: Length | undefined;
  readonly longest: Length | undefined;
  readonly ends: readonly [PieceEnd, PieceEnd];
  readonly ferruleLot: string;
  readonly machine: string;
  readonly finished: Length | undefined;
  readonly lengthVerdict: string;
  readonly testPressure: Measure | undefined;
  readonly testedAt: Measure | undefined;
  /** Seconds. */
  readonly testedFor: number | undefined;
  readonly flushed: boolean;
  readonly capped: boolean;
  readonly by: string;
  /** What its cell says; for how far it is see `statusOfPiece`. */
  readonly status: PieceStatus;
  /** A word in the status cell that nobody knows: `hold`. Such a piece counts as planned and stays as it is. */
  readonly ownStatus?: string | undefined;
  /** The scrapped piece that it is made for. */
  readonly replaces: string;
  readonly useBy: string;
  readonly note: string;
  /** What could not be read. */
  readonly problems: readonly string[];
}

/** Names of parts and pieces are compared without case and outer blanks. */
export const pieceKey = (text: string): string => text.replace(/\s+/g, ' ').trim().toLowerCase();

/** Number of one piece: the assembly's number (else prefix and line) and which piece of it: `117-2`. */
export const pieceNumber = (assembly: string, nth: number): string => `${assembly}-${nth}`;

/** A piece's number parted into that of its assembly and which piece it is; undefined for a number of another form. */
export function partsOfNumber(piece: string): { readonly assembly: string; readonly nth: number } | undefined {
  const [, assembly, nth] = /^(.+)-(\d{1,6})$/.exec(piece.trim()) ?? [];
  return assembly === undefined ? undefined : { assembly, nth: Number(nth) };
}

/** Assembly that a piece's number begins with. */
export const assemblyOf = ({ piece }: Piece): string => partsOfNumber(piece)?.assembly ?? piece;
