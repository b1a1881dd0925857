import type { FakeCell } from '../../workbook/fakeWorkbook';

type Rows = readonly (readonly FakeCell[])[];

const hose = 'Larch DN 12';
const pair = [hose, 'Larch cone'] as const;

export const machineHeadings = [
  'Machine',
  'Die',
  'Hose',
  'Fitting',
  'Dial',
  'Step (mm)',
  'Lowest',
  'Highest',
  'Largest move',
  'Date',
  'Note',
];

/** A catalogue of an invented workshop: never crimp from it. */
export function registerSheets(machines: Rows, range = 'A1:K5'): Readonly<Record<string, Rows>> {
  return {
    Hoses: [
      ['Hose', 'Family', 'Bore (mm)', 'Working pressure (bar)'],
      [hose, 'Larch', 12.7, 275],
    ],
    Fittings: [
      ['Fitting', 'Family', 'End form', 'Bore (mm)', 'Cut-off (mm)'],
      ['Larch cone', 'Larch', '24° cone', 12.7, 30],
      ['Larch elbow', 'Larch', '24° cone', 12.7, 40],
    ],
    Crimps: [
      ['Hose', 'Fitting', 'Die', 'Dial', 'Crimp diameter (mm)', 'Tolerance (mm)'],
      [...pair, 'D23', 400, 25, 0.1],
    ],
    Machines: [machineHeadings, ...machines],
    Catalogue: [[{ formula: `=HOSE.CATALOGUE(Hoses!A1:D9, Fittings!A1:E9, Crimps!A1:F9, Machines!${range})`, value: 'CAT-1' }]],
  };
}

/** Machine Gate with its description and one recorded dial. */
export const gate: Rows = [
  ['Gate', '', '', '', '', 0.02, 100, 900, 12, '2026-01-01', ''],
  ['Gate', 'D23', ...pair, 410, '', '', '', '', '2026-02-01', 'kept'],
];

/** The same catalogue, whose formula names no table Machines; other sheets besides. */
export function withoutRegister(others: Readonly<Record<string, Rows>> = {}): Readonly<Record<string, Rows>> {
  const { Hoses, Fittings, Crimps } = registerSheets([]) as Record<string, Rows>;
  const formula = '=HOSE.CATALOGUE(Hoses!A1:D9, Fittings!A1:E9, Crimps!A1:F9)';
  return { Hoses: Hoses!, Fittings: Fittings!, Crimps: Crimps!, Catalogue: [[{ formula, value: 'CAT-1' }]], ...others };
}
