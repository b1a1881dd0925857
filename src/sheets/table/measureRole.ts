import type { MeasureRole } from './tableReader';

/** A column of lengths of hose. */
export const lengthRole = (label: string): MeasureRole => ({ quantity: 'length', group: 'length', label });

/** A column of diameters or other small lengths. */
export const diameterRole = (label: string): MeasureRole => ({ quantity: 'length', group: 'diameter', label });
