import type { FakeCell } from '../../workbook/fakeWorkbook';

/** Rows of an invented workshop that wait for readings: never crimp from them. */
export const benchSheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>> = {
  Record: [
    ['Bench record, an invented week'],
    ['Change per digit (mm)', 0.02, 'Lowest dial (digits)', 100],
    [],
    [
      'Line',
      'Hose',
      'Coupling',
      'End',
      'Die',
      'Dial',
      'Reading 1 (mm)',
      'Reading 2 (mm)',
      'Reading 3 (mm)',
      'Reading 4 (mm)',
      'Target (mm)',
      'Tolerance (mm)',
    ],
    [1, 'Larch DN 12', 'Larch cone', 'A', 'D23', 410, 25.02, 25.01, 24.99, 25, 25, 0.1],
    [1, 'Larch DN 12', 'Larch cone', 'B', 'D23', 410, '', '', '', '', 25, 0.1],
    [2, 'Larch DN 12', 'Larch elbow', 'A', 'D23', 405, '', '', '', '', 25, 12],
    [3, 'Larch DN 12', 'Larch cone', 'A', 'D23', 410, 25.3, '', '', '', 25, 0.1],
    [4, 'Larch DN 12', 'Larch cone', 'A', 'D23', '', '', '', '', '', 25, 0.1],
  ],
  Ends: [
    ['Line', 'Hose', 'Fitting A', 'Fitting B', 'Target A (in)', 'Target B (in)', 'Tolerance (in)', 'A 1', 'A 2', 'B 1', 'B 2'],
    [7, 'Rowan DN 19', 'Rowan cone', 'Rowan flange', 1.25, 1.5, 0.005, '', '', '', ''],
  ],
};
