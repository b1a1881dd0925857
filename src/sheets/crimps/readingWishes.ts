import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';

/** What a crimp should be; diameters in the measurements' unit. */
export interface CrimpTarget {
  readonly target: Decimal;
  readonly tolerance: Decimal;
  readonly largestSpread?: Decimal | undefined;
}

/** How to read; diameters in `unit`. */
export interface ReadingWishes {
  readonly unit: LengthUnit;
  /** Rows that make one crimp where each reading has its own row. */
  readonly readingsACrimp: number;
  /** For rows that state none and are in no catalogue. */
  readonly typed?: Partial<CrimpTarget> | undefined;
  /** Stated once for the whole sheet, above the table. */
  readonly above?: Partial<CrimpTarget> | undefined;
  /** Machine of rows that name none. */
  readonly machine?: string | undefined;
  /** The catalogue's crimp data of a hose and a fitting; throws TradeError where there is none. */
  readonly setUp?: ((hose: string, fitting: string) => CrimpTarget) | undefined;
  /** Rows of the sheet as it shows them; undefined = the whole table. */
  readonly picked?: ReadonlySet<number> | undefined;
}
