import type { QuoteColumn } from './quoteLayout';

/** First cell of a quote sheet, and the first of its working: by these a quote is found again. */
export const SHEET_TITLE = 'Quote';
export const WORKING_TITLE = 'Working: not printed';

/** Headings of a quote's columns; that of the overall length has its unit behind it. */
export const HEADINGS: Readonly<Partial<Record<QuoteColumn, string>>> = {
  line: 'Line',
  label: 'Wanted for',
  hose: 'Hose',
  fittingA: 'Fitting A',
  fittingB: 'Fitting B',
  guard: 'Guard',
  fluid: 'Fluid',
  rating: 'Rating',
  quantity: 'Quantity',
  each: 'Price each',
  lineTotal: 'Line total',
  note: 'Note',
  check: 'Assembly',
  hoseCost: 'Hose, each',
  fittingsCost: 'Fittings, each',
  labourCost: 'Labour, each',
  assemblyCost: 'Cost without guard',
  guardCost: 'Guard, each',
  cost: 'Cost each',
  exact: 'Line before rounding',
  missing: 'Missing prices',
};
