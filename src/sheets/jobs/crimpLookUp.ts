import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { CrimpEnd } from './benchCard';

/** What the loaded catalogue knows; lengths in the unit asked for. */
export interface CrimpLookUp {
  /** Short text of the data's origin, printed on every card: the catalogue's handle. */
  readonly handle: string;
  /** Set-up of one hose and fitting; throws TradeError where there is none. */
  crimp(hose: string, fitting: string, unit: LengthUnit): Partial<Omit<CrimpEnd, 'end' | 'fitting'>>;
  /** The whole assembly: rating of the weakest part (undefined where any part's rating is missing), and what is wrong with it. */
  assembly(
    hose: string,
    fittingA: string,
    fittingB: string,
    overall: Decimal,
    unit: LengthUnit,
  ): {
    readonly workingPressure: { readonly value: Decimal; readonly unit: string } | undefined;
    readonly wrong: readonly string[];
  };
}
