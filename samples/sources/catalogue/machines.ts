import { machine as gateMachine } from '../jobSheet/crimps';
import { NEVER_CRIMP, type SampleTable, type TableCell } from './sampleTable';

const day = (year: number, month: number, date: number) => new Date(Date.UTC(year, month - 1, date));
const VAN = 'Machine in the van';

const machine = (
  name: string,
  catalogueDials: 'yes' | 'no',
  limits: { step: number; perTurn: number; lowest: number; highest: number; largestMove: number },
): TableCell[] => {
  const { step, perTurn, lowest, highest, largestMove } = limits;
  return [
    name,
    catalogueDials,
    undefined,
    undefined,
    undefined,
    undefined,
    step,
    perTurn,
    lowest,
    highest,
    largestMove,
    day(2026, 8, 31),
    'invented',
  ];
};

const setting = (name: string, die: string, hose: string, fitting: string, dial: number, date: Date): TableCell[] => {
  return [name, undefined, die, hose, fitting, dial, undefined, undefined, undefined, undefined, undefined, date, NEVER_CRIMP];
};

/** Two machines, and the dials they were found to need; on the second one a higher number crimps looser, so the catalogue's dials are not for it. */
export const machinesTable: SampleTable = {
  name: 'Machines',
  headings: [
    'Machine',
    'Catalogue dials',
    'Die',
    'Hose',
    'Fitting',
    'Dial',
    'Step (mm)',
    'Per turn (mm)',
    'Lowest',
    'Highest',
    'Largest move',
    'Date',
    'Note',
  ],
  rows: [
    machine(gateMachine.name, 'yes', gateMachine),
    machine(VAN, 'no', { step: -0.022, perTurn: 0.37, lowest: 50, highest: 750, largestMove: 9 }),
    setting(gateMachine.name, 'D23', 'Larch DN 12', 'Larch 24° cone S straight DN 12', 409, day(2025, 9, 12)),
    setting(gateMachine.name, 'D23', 'Larch DN 12', 'Larch 24° cone S straight DN 12', 414, day(2026, 9, 3)),
    setting(gateMachine.name, 'D27', 'Larch DN 16', 'Larch 24° cone L straight DN 16', 433, day(2026, 9, 3)),
    setting(gateMachine.name, 'D40', 'Rowan DN 25', 'Rowan split flange straight DN 25', 484, day(2026, 9, 4)),
    setting(VAN, 'D19', 'Larch DN 10', 'Larch 24° cone S straight DN 10', 318, day(2026, 7, 20)),
    setting(VAN, 'D23', 'Larch DN 12', 'Larch 24° cone S straight DN 12', 296, day(2026, 7, 20)),
    setting(VAN, 'D27', 'Larch DN 16', 'Larch 24° cone L straight DN 16', 281, day(2026, 7, 21)),
  ],
};
