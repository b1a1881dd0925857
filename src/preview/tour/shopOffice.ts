import type { Tour } from './tour';

/** The shop office: from job lines to the cut list and the cards for the bench. */
export const shopOffice: Tour = {
  id: 'shop-office',
  person: 'Shop office',
  task: 'this week’s rows, cut and carded',
  sample: 'catalogue.xlsx',
  steps: [
    {
      title: 'A hose and two couplings are enough',
      text:
        'Cut length, pressure and mass of this row are looked up and worked out from the parts beside it. Select a shaded cell, and the strip ' +
        'at the bottom says what its function does and which cells it took.',
      select: { sheet: 'Week', address: 'J6' },
      place: 'week/columns',
      strip: 'open',
    },
    {
      title: 'What cannot be assembled says so',
      text:
        'Coupling B of this row has just been changed to one of another family. The strip at the bottom repeats what the row says is wrong, ' +
        'before anybody cuts hose for it; where there is no crimp data, it says do not assemble.',
      select: { sheet: 'Week', address: 'J11' },
      place: 'week/columns',
      strip: 'open',
      changes: [{ kind: 'values', at: { sheet: 'Week', address: 'F11' }, values: [['Alder 24° cone L straight DN 10']] }],
    },
    {
      title: 'The row is right again',
      text:
        'The right coupling is back, and the row reads OK. In the same way the view Week › Columns adds cut length, die, dial, crimp diameter or ' +
        'insertion depth to a table of your own, with one formula a row.',
      select: { sheet: 'Week', address: 'A5:H13' },
      place: 'week/columns',
      changes: [{ kind: 'values', at: { sheet: 'Week', address: 'F11' }, values: [['Larch 24° cone S straight DN 10']] }],
    },
    {
      title: 'A cut list that wastes next to nothing',
      text:
        'The view Week › Cut list takes the selected rows and the reels of the rack, plans the cuts, draws every reel to scale and says how far the plan ' +
        'can be from the best one. Cut list, rack afterwards and pieces become sheets of their own.',
      select: { sheet: 'Week', address: 'A6:H13' },
      place: 'week/cut-list',
    },
    {
      title: 'Cards for the bench, tags for the hoses',
      text:
        'In the views beside it, Week › Cards and Week › Tags: one card a line with the steps in working order, die, dial, crimp diameter with its limits and room for ' +
        'four readings, and tags with a code of the number. They print from here or as a sheet.',
      select: { sheet: 'Week', address: 'A6:H13' },
      place: 'week/cards',
    },
  ],
};
