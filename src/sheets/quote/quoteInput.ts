import type { QuoteLine } from '../jobs/quoteLine';
import type { PlainHoseCost } from './plainHose';
import type { HeadInput } from './quoteHead';
import type { QuoteSheets } from './quoteLayout';

/** Everything a quote sheet is made of. */
export interface QuoteInput extends HeadInput {
  /** Names that are not taken. */
  readonly sheets: QuoteSheets;
  readonly lines: readonly QuoteLine[];
  readonly lengthUnit: string;
  readonly pressureUnit: string;
  /** Number format of overall lengths: to the step of the bench. */
  readonly lengthFormat: string | undefined;
  /** Undefined where the catalogue states no temperatures. */
  readonly temperatureUnit: string | undefined;
  /** The hoses of the table Derating, as a formula names them; undefined where there is no such table. */
  readonly deratedHoses: string | undefined;
  /** With how many decimals ratings are read; undefined: as they are. */
  readonly ratingDecimals: number | undefined;
  readonly plainHose: PlainHoseCost;
}
