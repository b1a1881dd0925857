import type { Quantity } from '../../core/units/measureUnit';

/** What a role's numbers measure, and which units belong together: lengths of hose, or small ones like diameters. */
export interface MeasureRole {
  readonly quantity: Quantity;
  readonly group: 'length' | 'diameter' | 'other';
  readonly label: string;
  /** A tolerance, which may be written with its sign: `± 0.1`. */
  readonly eitherWay?: boolean | undefined;
}

/** A column of lengths of hose. */
export const lengthRole = (label: string): MeasureRole => ({ quantity: 'length', group: 'length', label });

/** A column of diameters or other small lengths. */
export const diameterRole = (label: string): MeasureRole => ({ quantity: 'length', group: 'diameter', label });
