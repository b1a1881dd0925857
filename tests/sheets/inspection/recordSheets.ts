import type { FakeCell } from '../../workbook/fakeWorkbook';

/** Readings and job lines of an invented workshop: never crimp from them. */
export const recordSheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>> = {
  Readings: [
    [
      'Line',
      'Hose',
      'Hose lot',
      'Coupling',
      'End',
      'Die',
      'Dial',
      'Machine',
      'Reading 1 (mm)',
      'Reading 2 (mm)',
      'Reading 3 (mm)',
      'Reading 4 (mm)',
      'Target (mm)',
      'Tolerance (mm)',
    ],
    [1, 'Larch DN 12', 'L70', 'Larch cone', 'A', 'D23', 410, 'Gate', 25.02, 25.01, 24.99, 25, 25, 0.1],
    [1, 'Larch DN 12', 'L70', 'Larch elbow', 'B', 'D23', 412, 'Gate', 25.21, 25.2, 25.22, 25.21, 25, 0.1],
    [1, 'Larch DN 12', 'L71', 'Larch cone', 'A', 'D23', 410, 'Gate', 25.08, 25.09, 25.1, 25.09, 25, 0.1],
    [1, 'Larch DN 12', 'L71', 'Larch elbow', 'B', 'D23', 412, 'Gate', '', '', '', '', 25, 0.1],
    [2, 'Larch DN 10', '', 'Larch cone', 'A', 'D19', 388, 'Gate', 22.8, 'abc', 22.8, 22.8, 22.8, 0.15],
  ],
  Jobs: [
    [
      'Line',
      'Wanted for',
      'Order',
      'Assembly no.',
      'Hose',
      'Fitting A',
      'Fitting B',
      'Quantity',
      'Overall length (mm)',
      'Cut length (mm)',
      'Working pressure (bar)',
    ],
    [1, 'Topper <lift>', 'B-41', 'H3-117', 'Larch DN 12', 'Larch cone', 'Larch elbow', 2, 1250, 1168, 275],
    [3, 'Boom', 'B-42', '', 'Rowan DN 19', 'Rowan flange', 'Rowan flange', 1, 3400, 3303, 350],
  ],
};
