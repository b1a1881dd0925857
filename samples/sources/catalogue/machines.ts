import { machine as gateMachine } from '../jobSheet/crimps';
import { dieFor, gateDial } from './dies';
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

/** Invented: dial of the machine in the van, from the closed die on. */
const vanDial = (crimpMm: number) => Math.round(2 + (crimpMm - dieFor(crimpMm).closedMm) / 0.07);

/**
 * Two machines, and the dials they were found to need. The second one has a short dial on which a higher number crimps looser: the
 * dials of Crimps are not for it.
 */
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
    machine(VAN, 'no', { step: -0.07, perTurn: 0.37, lowest: 0, highest: 60, largestMove: 3 }),
    setting(gateMachine.name, 'D26', 'Larch DN 12', 'Larch 24° cone S straight DN 12', gateDial(27.35) - 3, day(2025, 9, 12)),
    setting(gateMachine.name, 'D26', 'Larch DN 12', 'Larch 24° cone S straight DN 12', gateDial(27.35) + 2, day(2026, 9, 3)),
    setting(gateMachine.name, 'D30', 'Larch DN 16', 'Larch 24° cone L straight DN 16', gateDial(31.6) + 3, day(2026, 9, 3)),
    setting(gateMachine.name, 'D39', 'Rowan DN 25', 'Rowan split flange straight DN 25', gateDial(44.2) + 2, day(2026, 9, 4)),
    setting(VAN, 'D22', 'Larch DN 10', 'Larch 24° cone S straight DN 10', vanDial(22.8), day(2026, 7, 20)),
    setting(VAN, 'D26', 'Larch DN 12', 'Larch 24° cone S straight DN 12', vanDial(27.35), day(2026, 7, 20)),
    setting(VAN, 'D30', 'Larch DN 16', 'Larch 24° cone L straight DN 16', vanDial(31.6) - 1, day(2026, 7, 21)),
  ],
};
