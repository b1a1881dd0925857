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
        'Cut length, pressure and mass of this row are looked up and worked out from the parts beside it. Select a shaded cell, and the panel ' +
        'Sheet says what its function does and which cells it took.',
      select: { sheet: 'Jobs', address: 'G10' },
      panel: 'sheet',
    },
    {
      title: 'What cannot be assembled says so',
      text:
        'Coupling B of this row has just been changed to one of another family. The row says what is wrong before anybody cuts hose for it; ' +
        'where there is no crimp data, it says do not assemble.',
      select: { sheet: 'Jobs', address: 'J12' },
      panel: 'sheet',
      changes: [{ kind: 'values', at: { sheet: 'Jobs', address: 'C12' }, values: [['Alder 24° cone L straight DN 10']] }],
    },
    {
      title: 'The row is right again',
      text:
        'The right coupling is back, and the row reads OK. In the same way the panel Columns adds cut length, die, dial, crimp diameter or ' +
        'insertion depth to a table of your own, with one formula a row.',
      select: { sheet: 'Jobs', address: 'A9:F14' },
      panel: 'columns',
      changes: [{ kind: 'values', at: { sheet: 'Jobs', address: 'C12' }, values: [['Larch 24° cone L straight DN 10']] }],
    },
    {
      title: 'A cut list that wastes next to nothing',
      text:
        'The panel Cuts takes the selected rows and the reels of the rack, plans the cuts, draws every reel to scale and says how far the plan ' +
        'can be from the best one. Cut list and rack afterwards become sheets of their own.',
      select: { sheet: 'Jobs', address: 'A10:E14' },
      panel: 'cuts',
    },
    {
      title: 'Cards for the bench, tags for the hoses',
      text:
        'Further down in the same panel: one card a line with the steps in working order, die, dial, crimp diameter with its limits and room for ' +
        'four readings, and tags with a code of the number. They print from here or as a sheet.',
      select: { sheet: 'Jobs', address: 'A10:E14' },
      panel: 'cuts',
    },
  ],
};
