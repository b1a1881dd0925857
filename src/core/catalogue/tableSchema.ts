import type { Quantity } from '../units/measureUnit';

/** What the tables of a catalogue state units of. */
export type FieldQuantity = Extract<Quantity, 'length' | 'pressure' | 'temperature' | 'mass' | 'massPerLength' | 'perLength'>;

/** What a column holds. */
export type FieldKind = 'name' | 'text' | 'number' | 'fraction' | 'angle' | 'date' | 'vacuum' | 'yesNo' | FieldQuantity;

/** Which unit of the catalogue a length is turned into: that of cut-offs, or that of crimp diameters. */
export type LengthFamily = 'cutOff' | 'diameter';

/** One column of a table that is understood. */
export interface Field {
  /** Heading without its unit, as it is printed. */
  readonly heading: string;
  readonly kind: FieldKind;
  /** A row without it is a bad row, a table without it no table. */
  readonly required?: true;
  /** Sign allowed; `positive` also refuses 0, which some hosts deliver for blanks. */
  readonly sign?: 'notNegative' | 'positive';
  /** A whole number of 36,526 … 73,050 is a date that the sheet made of a fraction. */
  readonly mayBeDate?: true;
  readonly lengths?: LengthFamily;
}

/** A table of the catalogue. */
export interface TableSchema {
  /** The sheet's name: `Hoses`. */
  readonly sheet: string;
  readonly fields: Readonly<Record<string, Field>>;
}

type ValueOf<K extends FieldKind> = K extends 'name' | 'text'
  ? string
  : K extends 'vacuum'
    ? number | 'yes' | 'no'
    : K extends 'yesNo'
      ? 'yes' | 'no'
      : number;

/** A good row of a table: numbers in the catalogue's units, at the 15 digits of a cell; dates as the sheet's day numbers. */
export type Row<T extends TableSchema> = {
  readonly [K in keyof T['fields']]: T['fields'][K] extends { required: true }
    ? ValueOf<T['fields'][K]['kind']>
    : ValueOf<T['fields'][K]['kind']> | undefined;
};
