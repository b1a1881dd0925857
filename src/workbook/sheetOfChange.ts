import type { Change } from './workbook';

/** The sheet that a change goes to: for a defined name, the one that it refers to. */
export const sheetOfChange = (change: Change): string =>
  'at' in change ? change.at.sheet : 'refersTo' in change ? change.refersTo.sheet : change.sheet;
