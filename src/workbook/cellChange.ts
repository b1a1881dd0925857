import type { Change } from './workbook';

/** A change that puts something into cells. */
export type CellChange = Extract<Change, { kind: 'values' | 'formulas' }>;

export const isCellChange = (change: Change): change is CellChange => change.kind === 'values' || change.kind === 'formulas';
