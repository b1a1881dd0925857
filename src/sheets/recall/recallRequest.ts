/** Which lot is meant: of hose, of a coupling, of ferrules; `any`: nobody says. */
export type LotOf = 'any' | 'hose' | 'fitting' | 'ferrule';

/** What somebody asks back. */
export type RecallRequest =
  | {
      readonly by: 'lot';
      readonly lot: string;
      readonly of: LotOf;
      /** Hose or coupling that the lot is of; pieces without that part are out. "" = not known. */
      readonly part: string;
    }
  | {
      readonly by: 'gauge';
      readonly name: string;
      /** Caliper, pressure gauge or die; "" = not known. */
      readonly kind: string;
      /** First day on which it may have been wrong, a day number; undefined: always. */
      readonly since: number | undefined;
    }
  | { readonly by: 'days'; readonly from: number; readonly to: number };

/** A gauge by name and kind: tells whether a piece was measured with another one. */
export interface KnownGauge {
  readonly name: string;
  readonly kind: string;
}
