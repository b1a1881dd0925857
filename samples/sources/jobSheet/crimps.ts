import { gateDial } from '../catalogue/dies';
import { GATE_STEP } from '../catalogue/gateStep';

/** One crimp of the bench record; diameters in mm, dial in digits. */
export interface Crimp {
  readonly line: number;
  readonly hose: string;
  readonly coupling: string;
  readonly end: 'A' | 'B';
  readonly die: string;
  /** Left out where the crimp has not been set up yet. */
  readonly dial?: number;
  /** As typed: numbers, now and then a text, or nothing yet. */
  readonly readings: readonly (number | string | undefined)[];
  readonly target?: number;
  readonly tolerance?: number;
  readonly note?: string;
}

/** The invented machine these crimps were made on: change of diameter in mm per digit and per turn of its calibration screw. */
export const machine = {
  name: 'Machine at the gate',
  step: GATE_STEP,
  perTurn: 0.44,
  lowest: 100,
  highest: 900,
  largestMove: 12,
} as const;

/** Largest difference of a crimp's readings, in mm, before it counts as oval. */
export const LARGEST_SPREAD = 0.25;

const larch12 = { hose: 'Larch DN 12', die: 'D26', dial: gateDial(27.35), target: 27.35, tolerance: 0.12 } as const;
const larch12Face = { ...larch12, dial: gateDial(27.4), target: 27.4 } as const;
const larch16 = { hose: 'Larch DN 16', die: 'D30', dial: gateDial(31.6), target: 31.6, tolerance: 0.15 } as const;
const larch10 = { hose: 'Larch DN 10', die: 'D22', dial: gateDial(22.8), target: 22.8, tolerance: 0.15 } as const;
const larch8 = { hose: 'Larch DN 8', die: 'D18', dial: gateDial(19.45), target: 19.45, tolerance: 0.12 } as const;
const rowan25 = { hose: 'Rowan DN 25', die: 'D39', dial: gateDial(44.2), target: 44.2, tolerance: 0.15 } as const;

/** The crimps of two days, both ends of an assembly in rows of their own. */
export const crimps: readonly Crimp[] = [
  { line: 1, coupling: '24° cone S straight', end: 'A', ...larch12, readings: [27.36, 27.31, 27.38, 27.35] },
  { line: 1, coupling: '24° cone S 90°', end: 'B', ...larch12, readings: [27.4, 27.34, 27.37, 27.41] },
  { line: 2, coupling: '24° cone S straight', end: 'A', ...larch10, readings: [22.61, 22.64, 22.58, 22.63], note: 'tight' },
  {
    line: 2,
    coupling: '24° cone S straight',
    end: 'B',
    ...larch10,
    dial: gateDial(22.8) - 12,
    readings: [22.79, 22.83, 22.76, 22.82],
    note: 'after the new dial was tried on a trial piece',
  },
  { line: 3, coupling: '24° cone L straight', end: 'A', ...larch8, readings: [19.66, 19.62, 19.7, 19.67], note: 'loose' },
  {
    line: 3,
    coupling: '24° cone L 90°',
    end: 'B',
    ...larch8,
    dial: gateDial(19.45) + 13,
    readings: [19.45, 19.49, 19.43, 19.47],
  },
  {
    line: 4,
    coupling: 'split flange straight',
    end: 'A',
    ...rowan25,
    readings: [44.38, 44.02, 44.36, 44.05],
    note: 'oval: mean in spec, readings differ too much',
  },
  {
    line: 4,
    coupling: 'split flange 90°',
    end: 'B',
    ...rowan25,
    readings: [44.23, 44.17, 44.2, undefined],
    note: 'fourth reading missing',
  },
  {
    line: 5,
    hose: 'Alder DN 31',
    coupling: '24° cone L straight',
    end: 'A',
    die: 'D44',
    dial: gateDial(49.2),
    target: 49.2,
    tolerance: 0.2,
    readings: [49.98, 50.05, 50.02, 49.95],
    note: 'far off: look before you turn the dial',
  },
  {
    line: 6,
    coupling: '24° cone L straight',
    end: 'A',
    ...larch16,
    readings: [31.6, '31,62', 31.58, 31.61],
    note: 'decimal comma typed: read as 31.62',
  },
  {
    line: 6,
    coupling: '24° cone L 45°',
    end: 'B',
    ...larch16,
    readings: [31.45, 31.49, 31.41, 31.45],
    note: 'mean on the lower limit: in spec',
  },
  {
    line: 7,
    coupling: 'O-ring face seal straight',
    end: 'A',
    ...larch12Face,
    readings: [27.52, 27.55, 27.49, 27.52],
    note: 'mean on the upper limit: in spec',
  },
  { line: 7, coupling: 'O-ring face seal 90°', end: 'B', ...larch12Face, readings: [], note: 'not crimped yet' },
  { line: 8, hose: 'Rowan DN 19', coupling: 'split flange straight', end: 'A', die: 'D35', readings: [], note: 'not set up yet' },
];
