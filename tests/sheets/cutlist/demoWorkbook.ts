import { Decimal } from '../../../src/core/units/decimal';
import type { CutsWritingOptions } from '../../../src/sheets/cutlist/cutsWriting';
import type { FakeCell } from '../../workbook/fakeWorkbook';

/** An invented week of an invented workshop: never crimp from it. */
export const demoSheets: Readonly<Record<string, readonly (readonly FakeCell[])[]>> = {
  Jobs: [
    ['Line', 'Wanted for', 'Hose', 'Bore (mm)', 'Quantity', 'Overall length (mm)', 'Cut length (mm)', 'Working pressure (bar)'],
    [1, 'Topper lift', 'Larch DN 12', 12.7, 4, 1250, 1168.5, 275],
    [2, 'Topper tilt', 'Larch DN 10', 9.5, 6, 985, 934, 330],
    [3, 'Loader swing', 'Larch DN 12', 12.7, 3, 1480, 1399, 275],
    [4, 'Boom', 'Rowan DN 19', 19.1, 2, 3400, 3303, 350],
    [5, 'Not measured yet', 'Larch DN 12', 12.7, 1, 900, '', 275],
    [6, 'Wheel lift', 'Larch DN 12', 12.7, 5, 700, 618, 275],
    [7, 'Steering', 'Larch DN 10', 9.5, 3, 742, 689, 330],
  ],
  Rack: [
    ['Hose', 'Length (mm)', 'Quantity', 'Place', 'Lot', 'Made'],
    ['Larch DN 12', 4200, 1, 'A1', 'L70', '2026-02-01'],
    ['Larch DN 12', 12000, 1, 'A2', 'L71', '2026-03-01'],
    ['Larch DN 10', 2900, 2, 'A3', 'L66', '2019-05-01'],
    ['Larch DN 10', 9800, 1, 'A4', 'L67', '2025-11-01'],
    ['Rowan DN 19', 4000, 1, 'B1', 'R12', '2026-01-01'],
  ],
  Hoses: [
    ['Hose', 'Family', 'Bore (mm)', 'Working pressure (bar)', 'Reel length (m)'],
    ['Larch DN 10', 'Larch', 9.5, 330, ''],
    ['Larch DN 12', 'Larch', 12.7, 275, 40],
    ['Rowan DN 19', 'Rowan', 19.1, 350, 20],
  ],
  Fittings: [
    ['Fitting', 'Family', 'End form', 'Bore (mm)', 'Cut-off (mm)', 'Working pressure (bar)'],
    ['Larch cone DN 12', 'Larch', '24° cone', 12.7, 40, 400],
  ],
  Crimps: [
    ['Hose', 'Fitting', 'Die', 'Dial', 'Crimp diameter (mm)', 'Tolerance (mm)'],
    ['Larch DN 12', 'Larch cone DN 12', 'D23', 400, 23.4, 0.2],
  ],
  Parts: [
    [
      'Catalogue',
      {
        formula: '=HOSE.CATALOGUE(Hoses!A1:E4,Fittings!A1:F2,Crimps!A1:F2)',
        value: 'CAT-00000000 (mm, bar; 3 hoses, 1 fitting, 1 crimp)',
      },
    ],
  ],
};

/** What is said of the pieces of the demo week. */
export const cutsOptions: CutsWritingOptions = {
  machine: '',
  proofFactor: new Decimal(2),
  useBy: '2032-10',
  pressureUnit: 'bar',
  prefix: '41/',
  now: '2026-10-05 07:12',
};
