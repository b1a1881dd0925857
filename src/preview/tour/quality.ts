import type { Tour } from './tour';

/** QA: from four readings to the cause, and to a record. */
export const quality: Tour = {
  id: 'quality',
  person: 'QA',
  task: 'a bad setting, or a machine gone off?',
  sample: 'measurement-book.xlsx',
  steps: [
    {
      title: 'Four readings, one verdict',
      text:
        'The mean of four caliper readings is judged against target and tolerance. This crimp is loose: the strip at the bottom says it in words, ' +
        'with the cells the verdict came from. A rejected crimp stays rejected.',
      select: { sheet: 'Week 39', address: 'N10' },
      place: 'qa/analysis',
      strip: 'open',
    },
    {
      title: 'A reading is corrected',
      text:
        'One reading of this row has just been changed, as if it had been typed wrongly. Mean, deviation and spread followed. What cannot be a ' +
        'reading, text or a date, would be refused with a sentence.',
      select: { sheet: 'Week 39', address: 'F8' },
      place: 'qa/analysis',
      strip: 'open',
      changes: [{ kind: 'values', at: { sheet: 'Week 39', address: 'F8' }, values: [[22.91]] }],
    },
    {
      title: 'Only one combination is off',
      text:
        'Week 39: one combination crimps large while all others are where they belong. Its recorded dial is wrong, the machine is not: correct ' +
        'the dial, crimp one trial piece and measure.',
      select: { sheet: 'Week 39', address: 'P7' },
      place: 'qa/analysis',
    },
    {
      title: 'The machine has gone off',
      text:
        'Week 40: all combinations crimp large by the same amount. Correcting every dial would hide it; the machine is to be calibrated. The view ' +
        'QA › Analysis draws the deviations and says which it is.',
      select: { sheet: 'Week 40', address: 'P7' },
      place: 'qa/analysis',
    },
    {
      title: 'Too few to tell',
      text:
        'Week 42 has five crimps of two combinations. That is not enough to blame anything, and the finding says so instead of guessing, ' +
        'and names what to measure next. The view QA › Records keeps the record for the customer.',
      select: { sheet: 'Week 42', address: 'P7' },
      place: 'qa/analysis',
    },
  ],
};
