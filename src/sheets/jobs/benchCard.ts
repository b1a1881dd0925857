import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { LengthRange } from './cutLine';

/** One end of an assembly as it is crimped; what is not stated is undefined. Lengths in the unit of the card's crimps. */
export interface CrimpEnd {
  readonly end: 'A' | 'B';
  readonly fitting: string;
  readonly ferrule?: string | undefined;
  readonly die?: string | undefined;
  readonly dial?: string | undefined;
  /** What to do where the machine has no dial: make a trial piece, at which dial. */
  readonly trial?: string | undefined;
  /** This end stays plain hose: there is nothing to crimp. */
  readonly isPlain?: boolean | undefined;
  readonly diameter?: Decimal | undefined;
  /** Limits of the mean crimp diameter. */
  readonly smallest?: Decimal | undefined;
  readonly largest?: Decimal | undefined;
  /** Of the readings, as the catalogue says. */
  readonly largestSpread?: Decimal | undefined;
  readonly crimpLength?: Decimal | undefined;
  /** 0 = none, undefined = not stated. */
  readonly skiveOutside?: Decimal | undefined;
  readonly skiveInside?: Decimal | undefined;
  readonly insertionDepth?: Decimal | undefined;
  /** Angle of the fitting's bend in degrees; 0 = straight, undefined = not stated. */
  readonly angle?: number | undefined;
  /** Where the set-up comes from: `Job sheet`, `CATALOGUE`, `MACHINE`. */
  readonly source?: string | undefined;
  /** What the data say besides: the note of their row, depths that differ. */
  readonly remark?: string | undefined;
  /** Why this end must not be assembled as it stands. */
  readonly problem?: string | undefined;
}

/** A piece of a card's line, as the sheet Pieces has it. */
export interface CardPiece {
  readonly piece: string;
  readonly lot: string;
  readonly reel: string;
  readonly useBy: string;
  /** It keeps its number, but is made no more. */
  readonly isScrapped: boolean;
}

/** What one bench card is about: one line of the job sheet. */
export interface BenchCard {
  readonly row: number;
  readonly line: string;
  readonly label: string;
  /** Number of the assembly; "" where the sheet has none. */
  readonly assembly: string;
  readonly order: string;
  readonly hose: string;
  /** 0 = the sheet does not say. */
  readonly quantity: number;
  readonly unit: LengthUnit;
  readonly overall?: Decimal | undefined;
  readonly limits?: LengthRange | undefined;
  /** What the bench cuts. */
  readonly cutLength?: Decimal | undefined;
  /** What the sheet says: it gives the overall length. */
  readonly wanted?: Decimal | undefined;
  readonly ends: readonly [CrimpEnd, CrimpEnd];
  /** Degrees, looking along the hose with end A at six o'clock, counter-clockwise. */
  readonly twist?: number | undefined;
  readonly workingPressure?: Decimal | undefined;
  readonly pressureUnit: string;
  /** Sleeves and guards; "" where there are none. */
  readonly guard: string;
  readonly note: string;
  /** It must not be made: no test pressure stands on it. */
  readonly isStop: boolean;
  /** Why not, beside what its ends say. */
  readonly problems: readonly string[];
  /** Something to know about it though it can be made. */
  readonly notes: readonly string[];
  /** Pieces that were planned, with their lots; none before a cut list was written. */
  readonly pieces?: readonly CardPiece[];
  /** `2026-10-09`, or as its cell has it; "" where the sheet does not say. */
  readonly due?: string;
  /** Crimper; "" where nobody named one. */
  readonly machine?: string;
}

/** Limits of the cut: what the limits of the finished length leave. They lie about the wanted length, not about the rounded one. */
export function cutLimits({ overall, limits, wanted }: BenchCard): LengthRange | undefined {
  if (!overall || !limits || !wanted) return undefined;
  return {
    shortest: wanted.plus(limits.shortest.minus(overall)),
    longest: wanted.plus(limits.longest.minus(overall)),
  };
}

/** What a line is called: `Line 4: Boom`, `Row 10: Boom` where the sheet numbers no lines. */
export function lineTitle({ line, label }: Pick<BenchCard, 'line' | 'label'>): string {
  const name = line.startsWith('row ') ? line.replace('row', 'Row') : `Line ${line}`;
  return label ? `${name}: ${label}` : name;
}

/** How many are to be made: `4 off`. */
export function countText({ quantity }: BenchCard): string {
  return `${quantity || '?'} off`;
}

/** True where both ends are bent, so that one is turned against the other. */
export function isTurned({ ends, twist }: BenchCard): boolean {
  return twist !== undefined || ends.every(end => (end.angle ?? 0) !== 0);
}
