/** How a price is made of a cost. */
export type PriceMethod = 'margin' | 'markup';

/** The settings as they stand in the fields. */
export interface QuoteFieldsText {
  readonly customer: string;
  readonly reference: string;
  readonly method: PriceMethod;
  /** Class of the user's table of margins; "" = the margin typed here. */
  readonly customerClass: string;
  readonly margin: string;
  readonly markupHose: string;
  readonly markupFittings: string;
  readonly markupGuards: string;
  readonly markupLabour: string;
  /** `1, 10, 50`; "" = none. */
  readonly breaks: string;
  readonly roundTo: string;
  readonly least: string;
  readonly callOut: string;
  readonly minimumCharge: string;
  readonly validDays: string;
  /** Number format; "" = as found in the sheet. */
  readonly format: string;
  /** Lines refer to the job sheet; else they are copied. */
  readonly isLinked: boolean;
}

/** Fields before anybody has touched them: what is to be earned is the user's to say. */
export const FRESH_QUOTE: QuoteFieldsText = {
  customer: '',
  reference: '',
  method: 'margin',
  customerClass: '',
  margin: '',
  markupHose: '',
  markupFittings: '',
  markupGuards: '',
  markupLabour: '',
  breaks: '1, 10, 50',
  roundTo: '0.01',
  least: '',
  callOut: '',
  minimumCharge: '',
  validDays: '30',
  format: '',
  isLinked: true,
};

/** Fields that can be wrong. */
export type NumberField =
  | 'customerClass'
  | 'margin'
  | 'markupHose'
  | 'markupFittings'
  | 'markupGuards'
  | 'markupLabour'
  | 'breaks'
  | 'roundTo'
  | 'least'
  | 'callOut'
  | 'minimumCharge'
  | 'validDays'
  | 'format';

export type Mistakes = Readonly<Partial<Record<NumberField, string>>>;

/** The settings of one quote; shares are fractions. */
export interface QuoteSettings {
  readonly customer: string;
  readonly reference: string;
  readonly method: PriceMethod;
  /** Class of the table of margins; undefined = `margin` counts. */
  readonly customerClass: string | undefined;
  readonly margin: number | undefined;
  readonly markups: Readonly<Record<'hose' | 'fittings' | 'guards' | 'labour', number>> | undefined;
  readonly breaks: readonly number[];
  readonly roundTo: number;
  /** Least price each; undefined = none. */
  readonly least: number | undefined;
  readonly callOut: number | undefined;
  /** Least sum of the lines; undefined = the rate `minimum charge`, where there is one. */
  readonly minimumCharge: number | undefined;
  readonly validDays: number;
  readonly format: string;
  readonly isLinked: boolean;
}
