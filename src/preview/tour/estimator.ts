import type { Tour } from './tour';

/** The estimator: from the duty to a price that follows the catalogue. */
export const estimator: Tour = {
  id: 'estimator',
  person: 'Estimator',
  task: 'a hose for the duty, and its price',
  sample: 'catalogue.xlsx',
  steps: [
    {
      title: 'The parts stand in ordinary sheets',
      text:
        'Hoses, Fittings, Crimps and the other sheets hold the workshop’s data, invented here. This cell, named Catalogue, checks them all ' +
        'and gives a short handle; every look-up takes it. The tab Parts loads your own files and searches them.',
      select: { sheet: 'Catalogue', address: 'B5' },
      place: 'parts/search',
    },
    {
      title: 'Which hose suits the duty',
      text:
        'The pressure asked for has just been raised to 260 bar, peaks included: hoses with a lower rating have left the list, the cheapest ' +
        'that suits stands on top. The view Quote › Duty asks for the whole duty and says why a hose is out.',
      select: { sheet: 'Find', address: 'B6' },
      place: 'quote/duty',
      changes: [{ kind: 'values', at: { sheet: 'Find', address: 'B6' }, values: [[260]] }],
    },
    {
      title: 'A longer hose',
      text:
        'The overall length of this line has just been changed to 2,000 mm. Cut length, mass, cost and price of the row, all in the strip at the ' +
        'bottom, followed at once, as with any formula. The view Quote › Columns adds such columns to a table of your own.',
      select: { sheet: 'Jobs', address: 'G13' },
      place: 'quote/columns',
      strip: 'open',
      changes: [{ kind: 'values', at: { sheet: 'Jobs', address: 'D13' }, values: [[2000]] }],
    },
    {
      title: 'A price goes up',
      text:
        'The price of Alder DN 6 has just been raised in the sheet Hoses. The handle in the Catalogue cell is another one now, and every line that ' +
        'uses the hose, like this one, has its new price: nothing had to be refreshed.',
      select: { sheet: 'Jobs', address: 'U10' },
      place: 'quote/columns',
      strip: 'open',
      changes: [{ kind: 'values', at: { sheet: 'Hoses', address: 'Q2' }, values: [[4.95]] }],
    },
    {
      title: 'The quote',
      text:
        'Select the lines to quote: the view Quote › Quote writes a sheet with quantity breaks, margin and total in live formulas, and Quote › ' +
        'To buy the purchase list for the same lines.',
      select: { sheet: 'Jobs', address: 'A10:E14' },
      place: 'quote/quote',
    },
  ],
};
