import type { QuoteColumn } from './quoteLayout';

/** First cell of a quote sheet, and of the sheet with its costs: by these a quote is found again. */
export const SHEET_TITLE = 'Quote';
export const WORKING_TITLE = 'Cost and margin: stays here';

/** As it stood beside the quotes of earlier versions. */
export const FORMER_WORKING_TITLE = 'Working: not printed';

/** What names the lines on the sheet with the costs. */
export const COSTS_LEAD = ['Line', 'Hose', 'Price each'];

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
  earned: 'Margin earned',
  exact: 'Line before rounding',
  missing: 'Missing prices',
};
